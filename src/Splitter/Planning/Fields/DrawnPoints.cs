using System.Collections;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Fields;

/// <summary>
/// How many fields a drawing takes at least, from the points of a lattice on which something is drawn, of which a field
/// holds so many at most. Quick where covers are not: it tells before a search what nobody would wait for.
/// </summary>
internal static class DrawnPoints
{
    /// <summary>Points along the shorter side of a field.</summary>
    private const int AlongField = 8;

    /// <summary>Points along the longer side of a drawing, at most.</summary>
    private const int AlongDrawing = 2000;

    internal static int LeastFields(Drawing drawing, FieldTemplate template)
    {
        var ground = template.Ground(template.At(default, Turn.None));
        var (bounds, shorter) = (drawing.Bounds, Math.Min(ground.Width, ground.Height));
        if (shorter <= 0)
            return 1;
        var step = Math.Max(shorter / AlongField, Math.Max(bounds.Width, bounds.Height) / AlongDrawing) + 1;
        var (xs, ys) = (Lattice(bounds.Left, bounds.Width), Lattice(bounds.Top, bounds.Height));
        var drawn = new BitArray(xs.Length * ys.Length);
        foreach (var shape in drawing.Shapes)
            Scan.Cover(
                shape.Footprint,
                xs,
                ys,
                (row, from, to) =>
                {
                    for (var column = from; column <= to; column++)
                        drawn[(row * xs.Length) + column] = true;
                }
            );
        var held = ((ground.Width / step) + 1L) * ((ground.Height / step) + 1L);
        return (int)((drawn.Cast<bool>().LongCount(point => point) + held - 1) / held);

        double[] Lattice(int from, int length) =>
            [.. Enumerable.Range(0, (length / step) + 1).Select(i => from + ((i + 0.5) * step))];
    }
}
