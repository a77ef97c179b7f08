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
        if (meetings.Count > 0)
            Visit(meetings, xs, visit);
    }

    /// <summary>Row by row, rising, each from left to right.</summary>
    private static void Visit(List<(int Row, double X)> meetings, double[] xs, Action<int, int, int> visit)
    {
        var (first, last) = (meetings[0].Row, meetings[0].Row);
        foreach (var (row, _) in meetings)
            (first, last) = (Math.Min(first, row), Math.Max(last, row));
        // Put where their rows end rather than sorted by them; afterwards, where rows begin.
        var starts = new int[last - first + 2];
        foreach (var (row, _) in meetings)
            starts[row - first]++;
        for (var i = 1; i < starts.Length; i++)
            starts[i] += starts[i - 1];
        var places = new double[meetings.Count];
        foreach (var (row, x) in meetings)
            places[--starts[row - first]] = x;
        for (var row = first; row <= last; row++)
        {
            var inRow = places.AsSpan(starts[row - first]..starts[row - first + 1]);
            inRow.Sort();
            for (var k = 0; k + 1 < inRow.Length; k += 2)
            {
                var from = FirstFrom(xs, inRow[k]);
                var to = FirstFrom(xs, inRow[k + 1]) - 1;
                if (from <= to)
                    visit(row, from, to);
            }
        }
    }

    /// <summary>The first place in a rising list that holds the value or more.</summary>
    internal static int FirstFrom(double[] rising, double value)
    {
        // Of ground that reaches far beyond the lattice, most ends lie there.
        if (rising.Length == 0 || value <= rising[0])
            return 0;
        if (value > rising[^1])
            return rising.Length;
        var (low, high) = (0, rising.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = rising[middle] < value ? (middle + 1, high) : (low, middle);
        }
        return low;
    }
}
