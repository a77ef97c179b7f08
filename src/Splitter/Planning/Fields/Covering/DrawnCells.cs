using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// A drawing on a grid of upright and level lines at any distances: which cells have something drawn in them. A cell
/// counts as touched when its inside is; lines of the drawing on a cell's edge do not count.
/// </summary>
internal sealed class DrawnCells
{
    /// <summary>Rounding of crossings, µm: nothing that whole micrometres can draw is as small.</summary>
    private const double Slack = 0.01;

    private readonly int[] xs;
    private readonly int[] ys;
    private readonly bool[] touched;

    /// <param name="xs">Upright lines, ascending.</param>
    /// <param name="ys">Level lines, ascending.</param>
    internal DrawnCells(IEnumerable<Region> drawn, int[] xs, int[] ys)
    {
        (this.xs, this.ys) = (xs, ys);
        touched = new bool[Columns * Rows];
        // The cells that no edge crosses lie inside or outside as their middle does.
        var across = Middles(xs);
        var down = Middles(ys);
        foreach (var region in drawn)
        {
            foreach (var (a, b) in Edges(region))
                Cross(a, b);
            Scan.Cover(
                region,
                across,
                down,
                (row, from, to) => Array.Fill(touched, true, (row * Columns) + from, to - from + 1)
            );
        }
    }

    /// <summary>How many cells lie side by side.</summary>
    internal int Columns => xs.Length - 1;

    /// <summary>How many cells lie one below the other.</summary>
    internal int Rows => ys.Length - 1;

    /// <summary>Something is drawn inside the cell.</summary>
    internal bool Touched(int column, int row) => touched[(row * Columns) + column];

    private static IEnumerable<(Point A, Point B)> Edges(Region region)
    {
        foreach (var ring in region.Rings)
        {
            var points = ring.Points;
            for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
                yield return (points[j], points[i]);
        }
    }

    /// <summary>Marks the cells whose inside an edge runs through.</summary>
    private void Cross(Point a, Point b)
    {
        if (a.Y > b.Y)
            (a, b) = (b, a);
        var slope = a.Y == b.Y ? 0 : (b.X - (double)a.X) / (b.Y - (double)a.Y);
        for (var row = Math.Max(0, GridLines.CellOf(ys, a.Y)); row < Rows && ys[row] <= b.Y; row++)
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
            for (var column = Math.Max(0, GridLines.CellOf(xs, (int)Math.Floor(from))); column < Columns; column++)
            {
                if (xs[column] >= to)
                    break;
                if (xs[column + 1] > from)
                    touched[(row * Columns) + column] = true;
            }
        }
    }

    /// <summary>
    /// A place near the middle of each cell, a quarter off the whole micrometres where the drawing's points lie.
    /// </summary>
    private static double[] Middles(int[] lines) =>
        [
            .. Enumerable
                .Range(0, lines.Length - 1)
                .Select(i => ((lines[i] + (long)lines[i + 1]) / 2) + (lines[i + 1] - lines[i] > 1 ? 0.25 : 0.5)),
        ];
}
