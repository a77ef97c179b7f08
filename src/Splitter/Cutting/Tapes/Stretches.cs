using System.Collections.Immutable;
using Splitter.Artwork.Tapes;
using Splitter.Geometry;

namespace Splitter.Cutting.Tapes;

/// <summary>
/// What a hooping sews of a thread that seams cut: its own stitches, and past each seam the stitches of its neighbour
/// as far as the overlap reaches. Rows with even and odd numbers reach differently far, so that the ends of two parts
/// interleave. What lies below rows ends at the seam, so that it shows nowhere.
/// </summary>
/// <param name="finished">What an overlap does not cover.</param>
internal sealed class Stretches(StitchOwners owners, Reach reach, FinishedWork finished, int hooping)
{
    /// <summary>
    /// A stitch is cut where the overlap ends if this much of it is left, µm; else it ends a hole earlier.
    /// </summary>
    private const int ShortestEnd = 500;

    private readonly Func<double, double, bool> even = Polygons.Containment(reach.EvenRows);
    private readonly Func<double, double, bool> odd = Polygons.Containment(reach.OddRows);
    private readonly Func<double, double, bool> lines = Polygons.Containment(reach.Lines);
    private readonly Func<double, double, bool> columns = Polygons.Containment(reach.Columns);

    /// <summary>Rows past a seam are there even where none of the hooping's own lead to them.</summary>
    /// <param name="stitches">Those that were divided are marked.</param>
    /// <param name="owner">For each the hooping whose it is.</param>
    internal IEnumerable<KeptThread> Of(
        OriginalThread thread,
        ImmutableArray<(OriginalStitch Stitch, bool IsNew)> stitches,
        int[] owner
    )
    {
        if (stitches.Length == 1)
        {
            if (owner[0] == hooping)
                yield return Kept(thread, stitches, owner, 1, 1);
            yield break;
        }
        for (int from = 1, to; from < stitches.Length; from = to)
        {
            for (to = from; to < stitches.Length && Sews(stitches, owner, to); )
                to++;
            if (to == from)
                to++;
            else if (
                owner.AsSpan(from, to - from).Contains(hooping)
                || stitches[from..to].Any(s => s.Stitch.Kind == StitchKind.Fill)
            )
                yield return Kept(thread, stitches, owner, from, to);
        }
    }

    private bool Sews(ImmutableArray<(OriginalStitch Stitch, bool IsNew)> stitches, int[] owner, int i) =>
        owner[i] == hooping
        || (
            Reaches(stitches[i - 1].Stitch.At, stitches[i].Stitch)
            && !finished.IsUnder(stitches[i - 1].Stitch.At, stitches[i].Stitch.At)
        );

    /// <summary>All of a stitch of another hooping lies within the overlap; of a column, its middle.</summary>
    private bool Reaches(Point from, OriginalStitch to)
    {
        if (to.IsBelow || !owners.CanSew(hooping, from, to.At))
            return false;
        var within = Within(to);
        if (to.Kind != StitchKind.Satin)
            return within(from.X, from.Y) && within(to.At.X, to.At.Y);
        var middle = from.Towards(to.At, 0.5);
        return within(middle.X, middle.Y);
    }

    private Func<double, double, bool> Within(OriginalStitch stitch) =>
        stitch.Kind switch
        {
            StitchKind.Fill => stitch.Row % 2 == 0 ? even : odd,
            StitchKind.Satin => columns,
            _ => lines,
        };

    /// <summary>The stitches to some holes, and what is left of those before and after within the overlap.</summary>
    private KeptThread Kept(
        OriginalThread thread,
        ImmutableArray<(OriginalStitch Stitch, bool IsNew)> stitches,
        int[] owner,
        int from,
        int to
    )
    {
        var kept = ImmutableArray.CreateBuilder<KeptStitch>();
        var first = stitches[from - 1].Stitch;
        var kind = stitches[Math.Min(from, stitches.Length - 1)].Stitch.Kind;
        if (from > 1 && End(first.At, stitches[from - 2].Stitch.At, first) is { } before)
            kept.Add(new(before, kind, StitchSource.Repeated));
        kept.Add(
            new(
                first.At,
                kind,
                from == 1 && thread.Start != ThreadArrival.GoesOn && owner[0] == hooping
                    ? StitchSource.Original
                    : StitchSource.Repeated
            )
        );
        for (var i = from; i < to; i++)
            kept.Add(
                new(
                    stitches[i].Stitch.At,
                    stitches[i].Stitch.Kind,
                    owner[i] != hooping ? StitchSource.Repeated
                        : stitches[i].IsNew ? StitchSource.Divided
                        : StitchSource.Original
                )
            );
        if (
            to < stitches.Length
            && End(stitches[to - 1].Stitch.At, stitches[to].Stitch.At, stitches[to].Stitch) is { } end
        )
            kept.Add(new(end, stitches[to].Stitch.Kind, StitchSource.Repeated));
        return new(kept.ToImmutable()) { Number = thread.Number, IsWhole = (from == 1, to == stitches.Length) };
    }

    /// <summary>
    /// The last place of the tape's grid on a stitch that the overlap still reaches; null for a column, which ends with
    /// whole stitches, for what lies below rows, and where nearly nothing is left.
    /// </summary>
    private Point? End(Point from, Point to, OriginalStitch stitch)
    {
        if (stitch.Kind == StitchKind.Satin || stitch.IsBelow)
            return null;
        var (within, last) = (Within(stitch), from);
        var count = (int)(from.DistanceTo(to) / Units.TapeStep);
        for (var k = 1; k < count; k++)
        {
            var at = from.Towards(to, (double)k / count).OnTape();
            if (!within(at.X, at.Y) || !owners.CanSew(hooping, at, at) || finished.IsAt(at))
                break;
            last = at;
        }
        return from.DistanceTo(last) >= ShortestEnd && last.DistanceTo(to) > 0 ? last : null;
    }
}
