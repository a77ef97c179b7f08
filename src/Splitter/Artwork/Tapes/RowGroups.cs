using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Tapes;

/// <summary>
/// Finds out which rows and columns of a colour block are one thing: sections of a fill side by side, columns of a
/// letter. A motif upon a fill is none of its sections, however alike their rows are.
/// </summary>
internal sealed class RowGroups
{
    /// <summary>Stands for what belongs to nothing.</summary>
    internal const int None = -1;

    /// <summary>
    /// Rows of which more than this share lies on rows that were sewn before lie over them, not beside.
    /// </summary>
    private const double Over = 0.5;

    /// <summary>
    /// Columns that touch and are no larger together are one thing, µm: a letter, a leaf. By eye, no source.
    /// </summary>
    internal const int SmallThing = 40 * Units.Millimetre;

    /// <summary>
    /// Rows and columns are compared with as many before them: what belongs together is sewn soon after.
    /// </summary>
    private const int MostCompared = 200;

    private readonly ImmutableArray<LaidPhase> phases;

    /// <summary>For each phase one of its group, in the end the first.</summary>
    private readonly int[] roots;
    private readonly Dictionary<int, Group> groups = [];

    /// <param name="Rows">Ground of a fill so far; none of columns.</param>
    /// <param name="LiesOver">Sections of other fills.</param>
    private sealed record Group(Box Box, int Last, CellGround Rows, ImmutableHashSet<int> LiesOver);

    private RowGroups(ImmutableArray<LaidPhase> phases)
    {
        this.phases = phases;
        roots = [.. phases.Select((p, i) => p.Kind == StitchKind.Run ? None : i)];
        int[] rows = [.. Enumerable.Range(0, phases.Length).Where(i => phases[i].Kind != StitchKind.Run)];
        foreach (var i in rows)
        {
            groups.Add(i, new(phases[i].Box, i, new(), []));
            if (phases[i].Kind == StitchKind.Fill)
                groups[i].Rows.Add(phases[i].Ground);
        }
        for (var j = 0; j < rows.Length; j++)
        {
            var before = rows.AsSpan(Math.Max(0, j - MostCompared)..j);
            if (phases[rows[j]].Kind == StitchKind.Satin)
                JoinColumn(rows[j], before);
            else
                JoinSection(rows[j], before);
        }
        foreach (var i in rows)
            roots[i] = Root(i);
    }

    /// <summary>For each phase the first one of its group; none for a line.</summary>
    /// <param name="last">For the first one of a group the last.</param>
    internal static int[] Of(ImmutableArray<LaidPhase> phases, out Dictionary<int, int> last)
    {
        var found = new RowGroups(phases);
        last = found.groups.ToDictionary(g => g.Key, g => g.Value.Last);
        return found.roots;
    }

    private void JoinColumn(int column, ReadOnlySpan<int> before)
    {
        foreach (var i in before)
            if (Root(i) is var one && Root(column) is var other && one != other && AreOneThing(i, column))
                Join(one, other);
    }

    private bool AreOneThing(int i, int j)
    {
        var (one, other) = (phases[i], phases[j]);
        var box = groups[Root(i)].Box.Joined(groups[Root(j)].Box);
        return one.Kind == StitchKind.Satin
            && one.Phase.IsClosed == other.Phase.IsClosed
            && Math.Max(box.Width, box.Height) <= SmallThing
            && one.Touches(other);
    }

    /// <summary>
    /// A section goes with the fills that it lies beside, the largest first; not with one that it lies over, nor with
    /// all of those that it lies over together.
    /// </summary>
    private void JoinSection(int section, ReadOnlySpan<int> before)
    {
        var touched = new SortedSet<int>();
        foreach (var i in before)
            if (phases[i].IsOneFillWith(phases[section]))
                touched.Add(Root(i));
        if (touched.Count == 0)
            return;
        var rows = phases[section].Lines.Value;
        var shared = touched.ToDictionary(fill => fill, fill => Upon(rows, groups[fill].Rows));
        var beside = touched.Where(fill => shared[fill] <= Over).ToList();
        if (beside.Sum(fill => shared[fill]) > Over)
            beside = [];
        groups[section] = groups[section] with { LiesOver = [.. touched.Except(beside)] };
        foreach (var fill in beside.OrderByDescending(fill => groups[fill].Rows.Count).ThenBy(fill => fill))
            if (Root(fill) is var one && Root(section) is var other && !AreApart(one, other) && one != other)
                Join(one, other);
    }

    /// <summary>
    /// The share of rows that lies on others, and nowhere near their edge if it is more than half: neighbours overlap
    /// there.
    /// </summary>
    private static double Upon(CellGround rows, CellGround others)
    {
        var share = (double)rows.Shared(others) / rows.Count;
        return share <= Over
            ? share
            // What is far from them does not count: sections are many, and a fill may be large.
            : (double)rows.Shared(others.Near(rows).Inner(FillSections.EdgeOverlap)) / rows.Count;
    }

    private bool AreApart(int one, int other) =>
        groups[one].LiesOver.Any(i => Root(i) == other) || groups[other].LiesOver.Any(i => Root(i) == one);

    private void Join(int one, int other)
    {
        var (first, second) = (Math.Min(one, other), Math.Max(one, other));
        var (kept, added) = (groups[first], groups[second]);
        var (more, fewer) = kept.Rows.Count >= added.Rows.Count ? (kept.Rows, added.Rows) : (added.Rows, kept.Rows);
        more.Add(fewer);
        roots[second] = first;
        groups.Remove(second);
        groups[first] = new(
            kept.Box.Joined(added.Box),
            Math.Max(kept.Last, added.Last),
            more,
            kept.LiesOver.Union(added.LiesOver)
        );
    }

    private int Root(int phase)
    {
        while (roots[phase] != phase)
            phase = roots[phase] = roots[roots[phase]];
        return phase;
    }
}
