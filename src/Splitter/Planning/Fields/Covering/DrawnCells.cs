using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// A drawing on a grid of upright and level lines at any distances: which cells have something drawn in them, and which
/// are drawn all over. A cell counts as touched when its inside is; lines of the drawing on a cell's edge do not count.
/// </summary>
internal sealed class DrawnCells
{
    /// <summary>Rounding of crossings, µm: nothing that whole micrometres can draw is as small.</summary>
    private const double Slack = 0.01;

    private readonly int[] xs;
    private readonly int[] ys;
    private readonly bool[] touched;
    private readonly bool[] full;

    /// <param name="xs">Upright lines, ascending.</param>
    /// <param name="ys">Level lines, ascending.</param>
    internal DrawnCells(IEnumerable<Region> drawn, int[] xs, int[] ys)
    {
        (this.xs, this.ys) = (xs, ys);
        touched = new bool[Columns * Rows];
        full = new bool[Columns * Rows];
        if (Columns <= 0 || Rows <= 0)
            return;
        var crossed = new bool[Columns * Rows];
        foreach (var region in drawn)
        {
            Clear(crossed, region.Bounds);
            foreach (var (a, b) in Edges(region))
                Cross(a, b, crossed);
            Fill(region, crossed);
        }
    }

    /// <summary>How many cells lie side by side.</summary>
    internal int Columns => xs.Length - 1;

    /// <summary>How many cells lie one below the other.</summary>
    internal int Rows => ys.Length - 1;

    /// <summary>Something is drawn inside the cell.</summary>
    internal bool Touched(int column, int row) => touched[(row * Columns) + column];

    /// <summary>One shape is drawn all over the cell.</summary>
    internal bool Full(int column, int row) => full[(row * Columns) + column];

    private static IEnumerable<(Point A, Point B)> Edges(Region region)
    {
        foreach (var ring in region.Rings)
        {
            var points = ring.Points;
            for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
                yield return (points[j], points[i]);
        }
    }

    private void Clear(bool[] crossed, Box bounds)
    {
        var (left, right) = (Math.Max(0, CellOf(xs, bounds.Left) - 1), Math.Min(Columns, CellOf(xs, bounds.Right) + 2));
        for (var row = Math.Max(0, CellOf(ys, bounds.Top) - 1); row < Rows && ys[row] <= bounds.Bottom; row++)
            if (right > left)
                Array.Clear(crossed, (row * Columns) + left, right - left);
    }

    /// <summary>Marks the cells whose inside an edge runs through.</summary>
    private void Cross(Point a, Point b, bool[] crossed)
    {
        if (a.Y > b.Y)
            (a, b) = (b, a);
        var slope = a.Y == b.Y ? 0 : (b.X - (double)a.X) / (b.Y - (double)a.Y);
        for (var row = Math.Max(0, CellOf(ys, a.Y)); row < Rows && ys[row] <= b.Y; row++)
        {
            double top = Math.Max(ys[row], a.Y),
                bottom = Math.Min(ys[row + 1], b.Y);
            // An edge that only touches the row's border is none of its inside.
            if (a.Y == b.Y ? a.Y <= ys[row] || a.Y >= ys[row + 1] : bottom <= top)
                continue;
            var (from, to) =
                a.Y == b.Y ? ((double)a.X, (double)b.X) : (a.X + (slope * (top - a.Y)), a.X + (slope * (bottom - a.Y)));
            if (from > to)
                (from, to) = (to, from);
            if (to - from > 4 * Slack)
                (from, to) = (from + Slack, to - Slack);
            else
                from = to = Math.Abs(from - Math.Round(from)) < 4 * Slack ? Math.Round(from) : from;
            for (var column = Math.Max(0, CellOf(xs, (int)Math.Floor(from))); column < Columns; column++)
            {
                if (xs[column] >= to)
                    break;
                if (xs[column + 1] > from)
                    crossed[(row * Columns) + column] = true;
            }
        }
    }

    /// <summary>The cells that no edge crosses lie inside or outside as their middle does.</summary>
    private void Fill(Region region, bool[] crossed)
    {
        var edges = Edges(region).Where(e => e.A.Y != e.B.Y).ToArray();
        var bounds = region.Bounds;
        var crossings = new List<double>();
        for (var row = Math.Max(0, CellOf(ys, bounds.Top)); row < Rows && ys[row] < bounds.Bottom; row++)
        {
            // A quarter off the whole micrometres where the drawing's points lie.
            var y = ((ys[row] + (long)ys[row + 1]) / 2) + (ys[row + 1] - ys[row] > 1 ? 0.25 : 0.5);
            crossings.Clear();
            foreach (var (a, b) in edges)
                if (a.Y < y != b.Y < y)
                    crossings.Add(a.X + ((b.X - (double)a.X) * (y - a.Y) / (b.Y - (double)a.Y)));
            crossings.Sort();
            var passed = 0;
            for (
                var column = Math.Max(0, CellOf(xs, bounds.Left));
                column < Columns && xs[column] < bounds.Right;
                column++
            )
            {
                var cell = (row * Columns) + column;
                var x = (xs[column] + (long)xs[column + 1]) / 2.0;
                while (passed < crossings.Count && crossings[passed] < x)
                    passed++;
                var inside = passed % 2 == 1;
                touched[cell] |= crossed[cell] || inside;
                full[cell] |= inside && !crossed[cell];
            }
        }
    }

    /// <summary>The last line at or before a value: the cell that begins there; -1 when all lie behind it.</summary>
    private static int CellOf(int[] lines, int value)
    {
        var found = Array.BinarySearch(lines, value);
        return found >= 0 ? found : ~found - 1;
    }
}
