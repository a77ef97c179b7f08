using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// The finished work as one looks at it: which fill or satin lies on top at a place. Lines of running stitches are too
/// fine to lie on top of anything; they are asked for by themselves.
/// </summary>
internal sealed class Surface
{
    /// <summary>No stroke counts as narrower than this, µm: one thread, no. 40. Common practice, no source.</summary>
    private const double Thread = 400;

    /// <summary>Side of the squares by which shapes are looked up, µm.</summary>
    private const int Square = 16 * Units.Millimetre;

    private readonly Func<double, double, bool>?[] contains;
    private readonly PathClipping?[] clippings;
    private readonly double[] widths;
    private readonly bool[] cut;
    private readonly int columns;

    /// <summary>For each square the shapes that may show there, the topmost first.</summary>
    private readonly List<int>[] squares;

    internal Surface(Drawing drawing, ImmutableArray<Box> grounds)
    {
        Drawing = drawing;
        var shapes = drawing.Shapes;
        contains = new Func<double, double, bool>?[shapes.Length];
        clippings = new PathClipping?[shapes.Length];
        widths = [.. shapes.Select(Width)];
        cut = [.. shapes.Select(s => !grounds.Any(g => g.Contains(s.Footprint.Bounds)))];
        CutRuns = [.. Enumerable.Range(0, shapes.Length).Where(i => cut[i] && shapes[i] is RunShape)];
        columns = (drawing.Bounds.Width / Square) + 1;
        var rows = (drawing.Bounds.Height / Square) + 1;
        squares = [.. Enumerable.Range(0, columns * rows).Select(_ => new List<int>())];
        for (var i = shapes.Length - 1; i >= 0; i--)
        {
            if (shapes[i] is RunShape || shapes[i].Footprint.IsEmpty)
                continue;
            var (from, to) = (
                SquareOf(shapes[i].Footprint.Bounds, first: true),
                SquareOf(shapes[i].Footprint.Bounds, first: false)
            );
            for (var row = from.Row; row <= to.Row; row++)
            for (var column = from.Column; column <= to.Column; column++)
                squares[(row * columns) + column].Add(i);
        }
    }

    internal Drawing Drawing { get; }

    /// <summary>Lines of running stitches that fit no field whole.</summary>
    internal ImmutableArray<int> CutRuns { get; }

    /// <summary>The shape fits no field whole.</summary>
    internal bool IsCut(int shape) => cut[shape];

    /// <summary>How wide the strokes of a satin or a run are on average, µm.</summary>
    internal double WidthOf(int shape) => widths[shape];

    internal PathClipping Clipping(int shape) => clippings[shape] ??= new(Drawing.Shapes[shape].Footprint);

    /// <summary>The fill or satin that shows at a place (µm), or null on bare cloth.</summary>
    internal int? TopAt(double x, double y)
    {
        var bounds = Drawing.Bounds;
        if (x < bounds.Left || x > bounds.Right || y < bounds.Top || y > bounds.Bottom)
            return null;
        foreach (var shape in squares[((int)(y - bounds.Top) / Square * columns) + ((int)(x - bounds.Left) / Square)])
            if ((contains[shape] ??= Polygons.Containment(Drawing.Shapes[shape].Footprint))(x, y))
                return shape;
        return null;
    }

    private (int Column, int Row) SquareOf(Box box, bool first) =>
        first
            ? ((box.Left - Drawing.Bounds.Left) / Square, (box.Top - Drawing.Bounds.Top) / Square)
            : ((box.Right - Drawing.Bounds.Left) / Square, (box.Bottom - Drawing.Bounds.Top) / Square);

    private static double Width(Shape shape) =>
        shape switch
        {
            SatinShape satin => Math.Max(
                Thread,
                satin.Columns.SelectMany(c => c.Rungs).Select(r => r.Width).DefaultIfEmpty(Thread).Average()
            ),
            RunShape run => Math.Max(Thread, run.Footprint.Area / Math.Max(Thread, run.Lines.Sum(l => l.Length))),
            _ => Thread,
        };
}
