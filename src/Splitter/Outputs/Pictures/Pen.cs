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
        var round = radius <= CoarseRadius ? Coarse : Fine;
        Span<Point> bar = stackalloc Point[4];
        var disc = new Point[round.Length];
        foreach (var line in lines)
        {
            var last = scale.Of(line[0]);
            for (var i = 0; i < line.Length; i++)
            {
                var at = scale.Of(line[i]);
                if (i > 0 && at == last)
                    continue;
                for (var k = 0; k < round.Length; k++)
                    disc[k] = Off(at, round[k].X * radius, round[k].Y * radius);
                painter.AddConvex(disc);
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

    private static Point Off(Point point, double x, double y) =>
        new(
            point.X + (int)Math.Round(x, MidpointRounding.AwayFromZero),
            point.Y + (int)Math.Round(y, MidpointRounding.AwayFromZero)
        );
}
