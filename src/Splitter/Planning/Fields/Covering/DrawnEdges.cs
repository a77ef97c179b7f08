namespace Splitter.Planning.Fields.Covering;

/// <summary>Where drawn things begin and end along both axes: what edges of fields may be flush with.</summary>
internal sealed class DrawnEdges
{
    private readonly int[] lefts;
    private readonly int[] tops;

    /// <summary>Mirrored, so that the outermost of ends that are merged stays, too.</summary>
    private readonly int[] rights;
    private readonly int[] bottoms;

    internal DrawnEdges(CoverTask task)
    {
        var (xs, ys) = (new List<int>(), new List<int>());
        foreach (var ring in task.Drawn.SelectMany(d => d.Rings))
        {
            AddTurns(ring.Points.Select(p => p.X), xs);
            AddTurns(ring.Points.Select(p => p.Y), ys);
        }
        lefts = Sorted(task.Wholes.Select(w => w.Left), xs);
        rights = Sorted(task.Wholes.Select(w => -w.Right), xs.Select(x => -x));
        tops = Sorted(task.Wholes.Select(w => w.Top), ys);
        bottoms = Sorted(task.Wholes.Select(w => -w.Bottom), ys.Select(y => -y));
    }

    /// <summary>Where things begin and end from left to right.</summary>
    /// <param name="most">How many of either.</param>
    internal (List<int> Starts, List<int> Ends) Across(int most) => Merged(lefts, rights, most);

    /// <summary>Where things begin and end from top to bottom.</summary>
    /// <param name="most">How many of either.</param>
    internal (List<int> Starts, List<int> Ends) Down(int most) => Merged(tops, bottoms, most);

    private static (List<int> Starts, List<int> Ends) Merged(int[] starts, int[] ends, int most) =>
        (Positions.Merged(starts, most), Positions.Merged(ends, most).ConvertAll(v => -v));

    private static int[] Sorted(IEnumerable<int> wholes, IEnumerable<int> turns) =>
        [.. wholes.Concat(turns).Distinct().Order()];

    /// <summary>Adds where an outline turns back along an axis.</summary>
    private static void AddTurns(IEnumerable<int> around, List<int> turns)
    {
        var values = new List<int>();
        foreach (var value in around)
            if (values.Count == 0 || values[^1] != value)
                values.Add(value);
        if (values.Count > 1 && values[0] == values[^1])
            values.RemoveAt(0);
        for (var i = 0; i < values.Count; i++)
        {
            var (before, after) = (values[i == 0 ? ^1 : i - 1], values[(i + 1) % values.Count]);
            if (before < values[i] == after < values[i])
                turns.Add(values[i]);
        }
    }
}
