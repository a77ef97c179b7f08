using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// The drawing in coarse cells, each with what is on top of it and the line that runs through it: quick to ask, again
/// and again, for the least that a seam through some ground shows. Prices are those of <see cref="SeamPrice"/>.
/// </summary>
internal sealed class SeamRaster
{
    /// <summary>
    /// Side of a cell, µm: finer ones cost more than they say, coarser ones lose the gaps between shapes.
    /// </summary>
    private const int Finest = 2 * Units.Millimetre;

    /// <summary>Most cells; a larger drawing is looked at more coarsely, so that time has a bound.</summary>
    private const int MostCells = 250_000;

    /// <summary>Nothing on top, or no line.</summary>
    private const int None = -1;

    private readonly Box bounds;
    private readonly double step;
    private readonly int columns;
    private readonly int rows;
    private readonly int[] top;
    private readonly int[] line;
    private readonly ImmutableArray<Box> boxes;

    internal SeamRaster(Drawing drawing)
    {
        bounds = drawing.Bounds;
        boxes = [.. drawing.Shapes.Select(s => s.Footprint.Bounds)];
        step = Math.Max(Finest, Math.Ceiling(Math.Sqrt((double)bounds.Width * bounds.Height / MostCells)));
        (columns, rows) = ((int)(bounds.Width / step) + 1, (int)(bounds.Height / step) + 1);
        (top, line) = (new int[columns * rows], new int[columns * rows]);
        Array.Fill(top, None);
        Array.Fill(line, None);
        var xs = Enumerable.Range(0, columns).Select(i => bounds.Left + ((i + 0.5) * step)).ToArray();
        var ys = Enumerable.Range(0, rows).Select(i => bounds.Top + ((i + 0.5) * step)).ToArray();
        for (var shape = 0; shape < boxes.Length; shape++)
        {
            var index = shape;
            if (drawing.Shapes[shape] is not RunShape)
                Scan.Cover(
                    drawing.Shapes[shape].Footprint,
                    xs,
                    ys,
                    (row, from, to) =>
                    {
                        Array.Fill(top, index, (row * columns) + from, to - from + 1);
                        // What is sewn over a line hides it.
                        Array.Fill(line, None, (row * columns) + from, to - from + 1);
                    }
                );
            foreach (var points in Lines.Of(drawing.Shapes[shape]).Select(l => l.Points))
                for (var i = 1; i < points.Length; i++)
                    Mark(points[i - 1], points[i], shape);
        }
    }

    /// <summary>
    /// What the least visible way through the common ground of two fields shows, mm of plain fill: each step goes on to
    /// one of the three next cells (Efros and Freeman 2001, SIGGRAPH, section 2.1). Shapes that either field holds stay
    /// whole, and a seam below them is hidden.
    /// </summary>
    /// <param name="upright">The way runs up and down, with one field on either side.</param>
    internal double Least(Box one, Box other, bool upright)
    {
        var common = one.Common(other).Common(bounds);
        var cut = new bool[boxes.Length];
        for (var i = 0; i < boxes.Length; i++)
            cut[i] = !(one.Contains(boxes[i]) || other.Contains(boxes[i]));
        var (left, right) = Range(common.Left - bounds.Left, common.Right - bounds.Left, columns, inside: upright);
        var (upper, lower) = Range(common.Top - bounds.Top, common.Bottom - bounds.Top, rows, inside: !upright);
        return upright
            ? Least(cut, (upper * columns) + left, lower - upper + 1, columns, right - left + 1, 1, left, columns)
            : Least(cut, (upper * columns) + left, right - left + 1, 1, lower - upper + 1, columns, upper, rows);
    }

    /// <param name="cut">Whether a seam cuts each shape.</param>
    /// <param name="first">The cell where it begins.</param>
    /// <param name="length">Steps along the way, each to a cell this much further.</param>
    /// <param name="width">Cells side by side, each this much further than the last.</param>
    /// <param name="place">Where the first of them lies among all side by side.</param>
    private double Least(bool[] cut, int first, int length, int along, int width, int aside, int place, int all)
    {
        var (before, now) = (new double[width], new double[width]);
        for (var k = 0; k < length; k++)
        {
            for (var i = 0; i < width; i++)
            {
                var cell = first + (k * along) + (i * aside);
                var least = Entered(cell, k, i, 0);
                if (i > 0)
                    least = Math.Min(least, Entered(cell, k, i, -1));
                if (i < width - 1)
                    least = Math.Min(least, Entered(cell, k, i, 1));
                now[i] = least + Shown(cut, cell, aside, place + i, all);
            }
            (before, now) = (now, before);
        }
        return before.Min();

        // A line counts where the way meets it, once as long as it stays on it.
        double Entered(int cell, int k, int i, int move)
        {
            var on = line[cell];
            var crossed = on != None && cut[on] && (k == 0 || line[cell - along + (move * aside)] != on);
            return before[i + move] + (crossed ? SeamPrice.LineCrossing : 0);
        }
    }

    /// <summary>What a way through a cell shows of the fill there.</summary>
    private double Shown(bool[] cut, int cell, int aside, int place, int all)
    {
        var shape = top[cell];
        if (shape == None || !cut[shape])
            return 0;
        var edge = (place > 0 && top[cell - aside] != shape) || (place < all - 1 && top[cell + aside] != shape);
        return (edge ? SeamPrice.AlongEdge : 1) * step / Units.Millimetre;
    }

    /// <summary>The cells of a stretch, both ends included.</summary>
    /// <param name="inside">Without those at its ends, where a seam has no room, if others are left.</param>
    private (int From, int To) Range(int from, int to, int count, bool inside)
    {
        var (first, last) = (Index(from, count), Index(to, count));
        return inside && last - first >= 3 ? (first + 1, last - 1) : (first, last);
    }

    private int Index(double way, int count) => Math.Clamp((int)Math.Floor(way / step), 0, count - 1);

    /// <summary>Marks every cell that a stretch of a line touches, so that no way slips through.</summary>
    private void Mark(Point from, Point to, int shape)
    {
        if (from.Y > to.Y)
            (from, to) = (to, from);
        var slope = from.Y == to.Y ? 0 : (to.X - (double)from.X) / (to.Y - (double)from.Y);
        var (upper, lower) = (Index(from.Y - bounds.Top, rows), Index(to.Y - bounds.Top, rows));
        for (var row = upper; row <= lower; row++)
        {
            var (a, b) = (
                row == upper ? from.X : from.X + (slope * (bounds.Top + (row * step) - from.Y)),
                row == lower ? to.X : from.X + (slope * (bounds.Top + ((row + 1) * step) - from.Y))
            );
            var (left, right) = (
                Index(Math.Min(a, b) - bounds.Left, columns),
                Index(Math.Max(a, b) - bounds.Left, columns)
            );
            Array.Fill(line, shape, (row * columns) + left, right - left + 1);
        }
    }
}
