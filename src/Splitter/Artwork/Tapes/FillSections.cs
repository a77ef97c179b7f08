using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Tapes;

/// <summary>What is sewn in one go of a group of phases.</summary>
/// <param name="Section">The number of the fill that it is a section of; null for all else.</param>
/// <param name="Phases">Numbers of the first and of the one behind the last.</param>
internal sealed record SewnStretch(int? Section, Range Phases);

/// <summary>
/// Sections of one fill are one object whatever is sewn between them, as long as what lies over and under it still has
/// a place: a fill ends before a section that lies over something which lies over an earlier one, and that section
/// begins another. Each part keeps the tape's order anyway; planning has to know what lies over what.
/// </summary>
internal sealed class FillSections
{
    /// <summary>
    /// Neighbours overlap by as much, µm, so that no cloth shows between: one does not lie over the other for that. By
    /// eye, no source.
    /// </summary>
    internal const int EdgeOverlap = 1500;

    /// <summary>
    /// Single lines of thread, such as ways between rows of a fill, are narrower than twice this, µm: what they lie
    /// over matters as little as with lines of their own.
    /// </summary>
    private const int Line = 500;

    /// <summary>
    /// Objects over a fill that are looked at before it goes on: so many lie over few fills. Beyond it the fill ends.
    /// </summary>
    private const int MostAbove = 2000;

    private readonly List<List<SewnStretch>> objects = [];

    /// <summary>For each object those that lie over it.</summary>
    private readonly List<SortedSet<int>> above = [];

    /// <summary>For each fill the object of its last section.</summary>
    private readonly Dictionary<int, int> open = [];

    /// <summary>Rows and columns, and what of them is no edge of a fill.</summary>
    private readonly CellLayers grounds = new();
    private readonly CellLayers inners = new();

    /// <summary>Stretches of the same object together, from the one that lies lowest up.</summary>
    internal static IEnumerable<ImmutableArray<SewnStretch>> Joined(
        ImmutableArray<SewnStretch> stretches,
        ImmutableArray<LaidPhase> phases
    )
    {
        if (stretches.Select(s => s.Section).OfType<int>().CountBy(fill => fill).All(sections => sections.Value == 1))
            return stretches.Select(s => ImmutableArray.Create(s));
        var found = new FillSections();
        foreach (var stretch in stretches)
            found.Add(stretch, [.. phases[stretch.Phases].Where(p => p.Kind != StitchKind.Run)]);
        return found.LowestFirst().Select(i => found.objects[i].ToImmutableArray());
    }

    /// <param name="rows">
    /// And columns. Lines do not matter: of the same thread, they hardly show on rows.
    /// </param>
    private void Add(SewnStretch stretch, ImmutableArray<LaidPhase> rows)
    {
        var (ground, fill) = (new CellGround(), new CellGround());
        foreach (var phase in rows)
            (phase.Kind == StitchKind.Fill ? fill : ground).Add(phase.Ground);
        var inner = fill.Inner(EdgeOverlap) is { Count: > 0 } within ? within : fill;
        inner.Add(ground);
        ground.Add(fill.Inner(Line));
        SortedSet<int> below = [.. grounds.Below(inner), .. inners.Below(ground)];
        var at = Place(stretch, below);
        objects[at].Add(stretch);
        foreach (var lower in below.Where(lower => lower != at))
            above[lower].Add(at);
        grounds.Lay(at, ground, below);
        inners.Lay(at, inner, below);
    }

    /// <summary>The number of the object that a stretch belongs to.</summary>
    private int Place(SewnStretch stretch, SortedSet<int> below)
    {
        if (stretch.Section is not { } fill)
            return Begin();
        if (!open.TryGetValue(fill, out var at) || LiesUnderAny(at, below))
            open[fill] = at = Begin();
        return at;
    }

    private int Begin()
    {
        objects.Add([]);
        above.Add([]);
        return objects.Count - 1;
    }

    /// <summary>Something else of these lies over an object, be it over what lies over that.</summary>
    private bool LiesUnderAny(int lowest, SortedSet<int> others)
    {
        if (others.All(other => other == lowest))
            return false;
        var (seen, next) = (new HashSet<int> { lowest }, new Stack<int>([lowest]));
        while (next.TryPop(out var at))
            foreach (var upper in above[at].Where(seen.Add))
                if (others.Contains(upper) || seen.Count > MostAbove)
                    return true;
                else
                    next.Push(upper);
        return false;
    }

    /// <summary>Of those that nothing else has to come before the one that is sewn first.</summary>
    private IEnumerable<int> LowestFirst()
    {
        var waiting = new int[objects.Count];
        foreach (var upper in above.SelectMany(uppers => uppers))
            waiting[upper]++;
        SortedSet<int> free = [.. Enumerable.Range(0, objects.Count).Where(i => waiting[i] == 0)];
        while (free.Count > 0)
        {
            var lowest = free.Min;
            free.Remove(lowest);
            yield return lowest;
            free.UnionWith(above[lowest].Where(upper => --waiting[upper] == 0));
        }
    }
}
