using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// What a person sees at each place of the drawing: the topmost fill or satin, and the topmost that is cut.
/// </summary>
internal sealed class CoverMap
{
    /// <summary>Nothing there.</summary>
    internal const int Bare = -1;

    /// <summary>
    /// Distance of places, µm: finer than a row of a fill, so that what shows is found within a thread's width.
    /// </summary>
    private const int Finest = 250;

    /// <summary>Most places; a larger drawing is looked at more coarsely, so that memory has a bound (32 MB).</summary>
    private const int MostPlaces = 4_000_000;

    private readonly Box bounds;
    private readonly int columns;
    private readonly int rows;
    private readonly double step;
    private readonly int[] top;
    private readonly int[] cut;

    internal CoverMap(Drawing drawing, Wholeness wholeness)
    {
        bounds = drawing.Bounds;
        step = Math.Max(Finest, Math.Ceiling(Math.Sqrt((double)bounds.Width * bounds.Height / MostPlaces)));
        (columns, rows) = ((int)(bounds.Width / step) + 1, (int)(bounds.Height / step) + 1);
        (top, cut) = (new int[columns * rows], new int[columns * rows]);
        Array.Fill(top, Bare);
        Array.Fill(cut, Bare);
        var xs = Enumerable.Range(0, columns).Select(i => bounds.Left + ((i + 0.5) * step)).ToArray();
        var ys = Enumerable.Range(0, rows).Select(i => bounds.Top + ((i + 0.5) * step)).ToArray();
        for (var shape = 0; shape < drawing.Shapes.Length; shape++)
        {
            if (drawing.Shapes[shape] is RunShape)
                continue;
            var (index, isCut) = (shape, wholeness.IsCut(shape));
            Scan.Cover(
                drawing.Shapes[shape].Footprint,
                xs,
                ys,
                (row, from, to) =>
                {
                    Array.Fill(top, index, (row * columns) + from, to - from + 1);
                    if (isCut)
                        Array.Fill(cut, index, (row * columns) + from, to - from + 1);
                }
            );
        }
    }

    /// <summary>Index of the topmost fill or satin at a place (µm), or <see cref="Bare"/>.</summary>
    internal int Top(double x, double y) => Place(x, y) is var p && p < 0 ? Bare : top[p];

    /// <summary>The same of shapes that seams cut.</summary>
    internal int TopCut(double x, double y) => Place(x, y) is var p && p < 0 ? Bare : cut[p];

    private int Place(double x, double y)
    {
        if (x < bounds.Left || y < bounds.Top)
            return -1;
        var (column, row) = ((int)((x - bounds.Left) / step), (int)((y - bounds.Top) / step));
        return column >= columns || row >= rows ? -1 : (row * columns) + column;
    }
}
