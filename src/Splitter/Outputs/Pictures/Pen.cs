using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>Lines of a width as outlines to fill: a bar for each stretch and a disc at each point.</summary>
internal static class Pen
{
    /// <summary>Corners of a disc whose radius is up to a pixel and a half, and of a larger one.</summary>
    private static readonly ImmutableArray<(double X, double Y)> Coarse = Circle.Directions(8);

    private static readonly ImmutableArray<(double X, double Y)> Fine = Circle.Directions(32);

    private const double CoarseRadius = 1.5 * Painter.Fraction;

    internal static void Draw(Painter painter, ImmutableArray<ImmutableArray<Point>> lines, PixelScale scale, int width)
    {
        var radius = scale.Of(width) / 2.0;
        Span<Point> bar = stackalloc Point[4];
        if (!painter.Nibs.TryGetValue(radius, out var nib))
            painter.Nibs.Add(radius, nib = NibOf(radius));
        foreach (var line in lines)
        {
            var last = scale.Of(line[0]);
            for (var i = 0; i < line.Length; i++)
            {
                var at = scale.Of(line[i]);
                if (i > 0 && at == last)
                    continue;
                painter.Add(nib, at);
                if (i > 0)
                {
                    var length = last.DistanceTo(at);
                    var (x, y) = ((at.Y - last.Y) / length * radius, (last.X - at.X) / length * radius);
                    (bar[0], bar[1], bar[2], bar[3]) = (
                        Off(last, x, y),
                        Off(at, x, y),
                        Off(at, -x, -y),
                        Off(last, -x, -y)
                    );
                    painter.AddConvex(bar);
                }
                last = at;
            }
        }
    }

    private static Nib NibOf(double radius) =>
        new([.. (radius <= CoarseRadius ? Coarse : Fine).Select(d => Off(default, d.X * radius, d.Y * radius))]);

    private static Point Off(Point point, double x, double y) =>
        new(
            point.X + (int)Math.Round(x, MidpointRounding.AwayFromZero),
            point.Y + (int)Math.Round(y, MidpointRounding.AwayFromZero)
        );
}
