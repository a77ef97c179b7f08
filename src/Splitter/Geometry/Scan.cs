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
        meetings.Sort();
        for (var k = 0; k + 1 < meetings.Count; k += 2)
        {
            var from = FirstFrom(xs, meetings[k].X);
            var to = FirstFrom(xs, meetings[k + 1].X) - 1;
            if (from <= to)
                visit(meetings[k].Row, from, to);
        }
    }

    /// <summary>The first place in a rising list that holds the value or more.</summary>
    internal static int FirstFrom(double[] rising, double value)
    {
        var found = Array.BinarySearch(rising, value);
        return found >= 0 ? found : ~found;
    }
}
