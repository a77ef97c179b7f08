using Splitter.Geometry;

namespace Splitter.Artwork.Tapes;

/// <summary>
/// Finds out what belongs together in a colour block, from what is sewn to what lies over it: sections of one fill, what
/// they hide, columns of one letter, ties. Each phase is looked at when it is sewn, and what came right before it with it.
/// </summary>
internal sealed class TapeObjects
{
    /// <summary>The share of a phase that later stitches cover, when it is there for them.</summary>
    private const double Hidden = 0.85;

    /// <summary>Columns that touch and are no larger together are one thing, µm: a letter, a leaf. By eye, no source.</summary>
    private const int SmallThing = 40 * Units.Millimetre;

    /// <summary>So many phases may lie between two sections of a fill: the way from one to the other, in pieces.</summary>
    private const int MostBetween = 4;

    private readonly List<TapeObject> found = [];

    /// <summary>In sewing order.</summary>
    internal static IReadOnlyList<TapeObject> Of(ColourBlock block)
    {
        var objects = new TapeObjects();
        for (var thread = 0; thread < block.Threads.Length; thread++)
        {
            var holes = block.Threads[thread].Holes;
            foreach (var phase in Phase.Of(holes, thread))
                objects.Take(TapeObject.Of(phase, holes));
            objects.EndThread(thread);
        }
        return objects.found;
    }

    private void Take(TapeObject next)
    {
        while (found.Count > 0 && Joined(next) is var (joined, from))
        {
            found.RemoveRange(from, found.Count - from);
            next = joined;
        }
        found.Add(next);
    }

    /// <summary>What ties the end of a thread belongs to what was sewn with it.</summary>
    private void EndThread(int thread)
    {
        if (found.Count < 2 || !found[^1].IsTiny || found[^1].FirstThread != thread || found[^2].LastThread != thread)
            return;
        found[^2] = found[^2].Before(found[^1], PhaseUse.Tie);
        found.RemoveAt(found.Count - 1);
    }

    /// <summary>What came before with this, and where it begins; null when this stands for itself.</summary>
    private (TapeObject Joined, int From)? Joined(TapeObject next)
    {
        var last = found[^1];
        if (last.IsTiny && last.LastThread == next.FirstThread)
            return (next.After(last, PhaseUse.Tie), found.Count - 1);
        if (next.Kind == StitchKind.Run)
            return null;
        if (IsOneThing(last, next))
            return (next.After(last, null), found.Count - 1);
        for (var from = found.Count - 1; from >= 0 && found.Count - from <= MostBetween + 1; from--)
            if (from < found.Count - 1 && found[from].IsOneFillWith(next) && IsHiddenBetween(from, next))
                return (Between(from, next), from);
            else if (found[from].Kind != StitchKind.Run)
                break;
        return next.IsClosed && last.Ground.IsOn(next.Ground, next.Ground, Hidden)
            ? (next.After(last, PhaseUse.Underlay), found.Count - 1)
            : null;
    }

    private static bool IsOneThing(TapeObject last, TapeObject next) =>
        last.IsOneFillWith(next)
        || (
            last.Kind == StitchKind.Satin
            && next.Kind == StitchKind.Satin
            && last.IsClosed == next.IsClosed
            && last.Box.Joined(next.Box) is var box
            && Math.Max(box.Width, box.Height) <= SmallThing
            && last.Ground.Meets(next.Ground)
        );

    private bool IsHiddenBetween(int from, TapeObject next) =>
        found.Skip(from + 1).All(way => way.Ground.IsOn(found[from].Ground, next.Ground, Hidden));

    private TapeObject Between(int from, TapeObject next)
    {
        for (var i = found.Count - 1; i > from; i--)
            next = next.After(found[i], PhaseUse.Travel);
        return next.After(found[from], null);
    }
}
