using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Tapes;

/// <summary>
/// Finds out what belongs together in a colour block: sections of one fill, columns of one letter, and what they hide,
/// which is there for them. What follows one another of it without anything else between is an object, and so are all
/// sections of a fill.
/// </summary>
internal sealed class TapeObjects
{
    /// <summary>
    /// The share of a phase that later stitches cover, when it is there for them: a way along an edge has a side beside
    /// it.
    /// </summary>
    private const double HiddenShare = 0.7;

    /// <summary>
    /// What interrupts something is part of it if it covers no more than this share of it: the tip of a fill.
    /// </summary>
    private const double Bit = 0.1;

    /// <summary>A longer interruption is something else, phases.</summary>
    private const int MostInterrupting = 12;

    /// <summary>What hides something is sought among so many groups of rows and columns that come after it.</summary>
    private const int MostHiding = 20;

    private readonly ImmutableArray<LaidPhase> phases;

    /// <summary>For each phase the first one of its group; none for a line that belongs to nothing.</summary>
    private readonly int[] groups;

    /// <summary>For the first one of a group the last.</summary>
    private readonly Dictionary<int, int> last;

    private TapeObjects(ImmutableArray<LaidPhase> phases)
    {
        this.phases = phases;
        groups = RowGroups.Of(phases, out last);
    }

    /// <summary>From the lowest up, see <see cref="FillSections"/>.</summary>
    internal static IEnumerable<TapeObject> Of(ColourBlock block)
    {
        var objects = new TapeObjects([
            .. block.Threads.SelectMany(
                (thread, i) => Phase.Of(thread.Holes, i).Select(phase => LaidPhase.Of(phase, thread.Holes))
            ),
        ]);
        objects.GroupHidden(out var isHidden);
        objects.GroupTiny(out var isTie);
        objects.GroupBits();
        return objects.InOrder(isHidden, isTie);
    }

    /// <summary>What later rows or columns of a group hide, closed ones, is of that group.</summary>
    private void GroupHidden(out bool[] isHidden)
    {
        isHidden = new bool[phases.Length];
        // From the last phase on, groups that come after it and what they cover there: the one whose turn it is next
        // comes first.
        var (after, grounds) = (new LinkedList<int>(), new Dictionary<int, CellGround>());
        for (var i = phases.Length - 1; i >= 0; i--)
            if (phases[i].Phase.IsClosed)
            {
                if (!grounds.TryGetValue(groups[i], out var ground))
                    grounds.Add(groups[i], ground = new());
                ground.Add(phases[i].Ground);
                after.Remove(groups[i]);
                after.AddFirst(groups[i]);
                if (after.Count > MostHiding)
                    after.RemoveLast();
            }
            else if (Hiding(phases[i], after, grounds) is { } group)
                (groups[i], isHidden[i]) = (group, true);
    }

    /// <summary>
    /// The group that hides a phase; or, where several do it together, a fill that hides most of it: what is sewn first
    /// for neighbouring fills is cut like rows then.
    /// </summary>
    private int? Hiding(LaidPhase phase, LinkedList<int> after, Dictionary<int, CellGround> grounds)
    {
        var shared = new Dictionary<int, int>();
        foreach (var group in after)
            if (phase.Ground.IsOn(grounds[group], HiddenShare))
                return group;
            else
                shared.Add(group, phase.Ground.Shared(grounds[group]));
        if (shared.Count == 0 || shared.Values.Sum() < phase.Ground.Count * HiddenShare)
            return null;
        var most = shared.OrderByDescending(s => s.Value).ThenBy(s => s.Key).First().Key;
        return phases[most].Kind == StitchKind.Fill ? most : null;
    }

    /// <summary>Small bits at either end of something go with it, when the thread is not cut between.</summary>
    private void GroupTiny(out bool[] isTie)
    {
        isTie = new bool[phases.Length];
        for (var i = phases.Length - 1; i >= 0; i--)
            if (groups[i] == RowGroups.None && phases[i].IsTiny)
                foreach (var beside in (ReadOnlySpan<int>)[i + 1, i - 1])
                    if (
                        beside >= 0
                        && beside < phases.Length
                        && groups[beside] != RowGroups.None
                        && phases[beside].Phase.Thread == phases[i].Phase.Thread
                    )
                    {
                        (groups[i], isTie[i]) = (groups[beside], true);
                        break;
                    }
    }

    /// <summary>
    /// Small bits that interrupt something, touch it, and are sewn without a cut, are part of it; so are ways between
    /// columns of a letter.
    /// </summary>
    private void GroupBits()
    {
        var latest = new Dictionary<int, int>();
        var sizes = phases
            .Select((p, i) => (Group: groups[i], p.Ground.Count))
            .GroupBy(p => p.Group, p => p.Count)
            .ToDictionary(group => group.Key, group => group.Sum());
        var boxes = phases
            .Select((p, i) => (Group: groups[i], p.Box))
            .GroupBy(p => p.Group, p => p.Box)
            .ToDictionary(group => group.Key, Box.Around);
        for (var i = 0; i < phases.Length; i++)
        {
            if (groups[i] == RowGroups.None)
                continue;
            if (latest.TryGetValue(groups[i], out var before) && i - before is > 1 and <= MostInterrupting + 1)
            {
                var between = Enumerable.Range(before + 1, i - before - 1).ToList();
                if (
                    between.TrueForAll(k => IsBit(k, before, i))
                    && (
                        between.Sum(k => phases[k].Ground.Count) <= Bit * sizes[groups[i]]
                        || (
                            phases[groups[i]].Kind == StitchKind.Satin
                            && between.TrueForAll(k => IsWay(k, boxes[groups[i]]))
                        )
                    )
                )
                    foreach (var k in between)
                        groups[k] = groups[i];
            }
            latest[groups[i]] = i;
        }
    }

    /// <summary>It goes from one column of a letter to another, within it.</summary>
    private bool IsWay(int phase, Box letter) =>
        phases[phase].Kind == StitchKind.Run
        && Math.Max(letter.Width, letter.Height) <= RowGroups.SmallThing
        && letter.Contains(phases[phase].Box);

    private bool IsBit(int phase, int after, int before) =>
        phases[phase].Phase.Thread == phases[after].Phase.Thread
        && phases[phase].Phase.Thread == phases[before].Phase.Thread
        && (groups[phase] == RowGroups.None || (groups[phase] > after && last[groups[phase]] < before));

    private IEnumerable<TapeObject> InOrder(bool[] isHidden, bool[] isTie)
    {
        bool IsMain(int i) => !isHidden[i] && !isTie[i];
        foreach (var stretches in FillSections.Joined([.. Stretches()], phases))
        {
            var hasMain = stretches.Any(s => Numbers(s).Any(IsMain));
            yield return new([.. stretches.SelectMany(stretch => Used(stretch, hasMain))]);
        }

        IEnumerable<(LaidPhase, PhaseUse)> Used(SewnStretch stretch, bool hasMain)
        {
            var afterMain = false;
            foreach (var i in Numbers(stretch))
            {
                afterMain |= IsMain(i);
                yield return (
                    phases[i],
                    // Below something that is not of the same object, it is all that there is.
                    !hasMain || IsMain(i)
                        ? PhaseUse.Main
                    : isTie[i] ? PhaseUse.Tie
                    : afterMain ? PhaseUse.Travel
                    : PhaseUse.Underlay
                );
            }
        }
    }

    private static IEnumerable<int> Numbers(SewnStretch stretch) =>
        Enumerable.Range(stretch.Phases.Start.Value, stretch.Phases.End.Value - stretch.Phases.Start.Value);

    private IEnumerable<SewnStretch> Stretches()
    {
        for (int from = 0, to; from < phases.Length; from = to)
        {
            for (to = from + 1; to < phases.Length && groups[from] != RowGroups.None && groups[to] == groups[from]; )
                to++;
            var group = groups[from];
            yield return new(group != RowGroups.None && phases[group].Kind == StitchKind.Fill ? group : null, from..to);
        }
    }
}
