namespace Splitter.Geometry;

/// <summary>Finds which points of a rectangular lattice lie in a region, row by row.</summary>
internal static class Scan
{
    /// <summary>
    /// Visits, for each row of the lattice, the runs of columns whose points lie in the region, ends included.
    /// </summary>
    /// <param name="xs">Where columns lie, rising, µm.</param>
    /// <param name="ys">Where rows lie, rising, µm.</param>
    internal static void Cover(Region region, double[] xs, double[] ys, Action<int, int, int> visit)
    {
        var meetings = new List<(int Row, double X)>();
        foreach (var ring in region.Rings)
            for (int i = 0, j = ring.Points.Length - 1; i < ring.Points.Length; j = i++)
            {
                var (a, b) =
                    ring.Points[j].Y <= ring.Points[i].Y
                        ? (ring.Points[j], ring.Points[i])
                        : (ring.Points[i], ring.Points[j]);
                // Rows from the upper end, itself included, to the lower one, which belongs to the next edge.
                for (var row = FirstFrom(ys, a.Y); row < ys.Length && ys[row] < b.Y; row++)
                    meetings.Add((row, a.X + ((b.X - (double)a.X) * (ys[row] - a.Y) / (b.Y - (double)a.Y))));
            }
        foreach (var (row, places) in ByRow(meetings))
        {
            places.Span.Sort();
            for (var k = 0; k + 1 < places.Length; k += 2)
            {
                var from = FirstFrom(xs, places.Span[k]);
                var to = FirstFrom(xs, places.Span[k + 1]) - 1;
                if (from <= to)
                    visit(row, from, to);
            }
        }
    }

    /// <summary>Row by row, rising; within a row as they come.</summary>
    private static IEnumerable<(int Row, Memory<double> Places)> ByRow(List<(int Row, double X)> meetings)
    {
        if (meetings.Count == 0)
            yield break;
        var first = meetings.Min(m => m.Row);
        var ends = new int[meetings.Max(m => m.Row) - first + 1];
        foreach (var (row, _) in meetings)
            ends[row - first]++;
        for (var i = 1; i < ends.Length; i++)
            ends[i] += ends[i - 1];
        var places = new double[meetings.Count];
        var next = (int[])ends.Clone();
        foreach (var (row, x) in meetings)
            places[--next[row - first]] = x;
        for (var i = 0; i < ends.Length; i++)
            yield return (first + i, places.AsMemory(next[i]..ends[i]));
    }

    /// <summary>The first place in a rising list that holds the value or more.</summary>
    internal static int FirstFrom(double[] rising, double value)
    {
        var (low, high) = (0, rising.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = rising[middle] < value ? (middle + 1, high) : (low, middle);
        }
        return low;
    }
}
