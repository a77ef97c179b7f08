using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

/// <summary>
/// What finished seams show of plain fills that are all cut and lie side by side, counted from nothing but their lines
/// and the fills' outlines. How a place near an outline is looked at is left open: there it may count for anything
/// between nothing and a whole.
/// </summary>
internal static class ShownSeams
{
    /// <summary>Distance between the places that are counted, µm: much finer than what is asserted.</summary>
    private const double Step = 50;

    /// <summary>
    /// From here on a place is amid a fill, or beside all of them, µm: half a millimetre is more than one row, which a seam
    /// along an edge may be off, and a cell of a quarter of a millimetre.
    /// </summary>
    private const double Amid = 800;

    /// <summary>Least and most that can be shown, mm of plain fill.</summary>
    internal static (double Least, double Most) Of(Division division, Drawing drawing)
    {
        var rings = drawing.Shapes.SelectMany(s => s.Footprint.Rings).Select(r => r.Points).ToList();
        var (least, most) = (0.0, 0.0);
        foreach (var points in division.Seams.Select(s => s.Line.Points))
            for (var i = 1; i < points.Length; i++)
            {
                double dx = points[i].X - points[i - 1].X,
                    dy = points[i].Y - points[i - 1].Y;
                var length = Math.Sqrt((dx * dx) + (dy * dy));
                var count = (int)Math.Ceiling(length / Step);
                for (var k = 0; k < count; k++)
                {
                    var (x, y) = (
                        points[i - 1].X + (dx * (k + 0.5) / count),
                        points[i - 1].Y + (dy * (k + 0.5) / count)
                    );
                    var inside = rings.Exists(r => Inside(r, x, y));
                    var amid = rings.TrueForAll(r => Away(r, x, y) > Amid);
                    var mm = length / count / 1000;
                    least += inside && amid ? mm : 0;
                    most += inside || !amid ? mm : 0;
                }
            }
        return (least, most);
    }

    /// <summary>Crossings of a ray to the right, odd or even.</summary>
    private static bool Inside(ImmutableArray<Point> ring, double x, double y)
    {
        var inside = false;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            if (
                ring[i].Y > y != ring[j].Y > y
                && x < ring[i].X + ((ring[j].X - (double)ring[i].X) * (y - ring[i].Y) / (ring[j].Y - (double)ring[i].Y))
            )
                inside = !inside;
        return inside;
    }

    /// <summary>Distance from an outline, µm.</summary>
    private static double Away(ImmutableArray<Point> ring, double x, double y)
    {
        var nearest = double.PositiveInfinity;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            double ex = ring[i].X - ring[j].X,
                ey = ring[i].Y - ring[j].Y,
                px = x - ring[j].X,
                py = y - ring[j].Y;
            var share = Math.Clamp(((px * ex) + (py * ey)) / ((ex * ex) + (ey * ey)), 0, 1);
            var (ax, ay) = (px - (share * ex), py - (share * ey));
            nearest = Math.Min(nearest, Math.Sqrt((ax * ax) + (ay * ay)));
        }
        return nearest;
    }
}
