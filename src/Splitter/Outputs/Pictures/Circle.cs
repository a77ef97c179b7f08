using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// Circles as polygons. Directions come from halving right angles with square roots, which every machine rounds alike;
/// sines and cosines differ in the last bit from one system's library to the next.
/// </summary>
internal static class Circle
{
    /// <summary>Corners: at a radius of 20 mm the polygon leaves the circle by 0.02 mm.</summary>
    private const int Corners = 64;

    private static readonly ImmutableArray<(double X, double Y)> Fine = Directions(Corners);

    internal static ImmutableArray<Point> Around(Point centre, int radius) =>
        [
            .. Fine.Select(d => new Point(
                centre.X + (int)Math.Round(d.X * radius, MidpointRounding.AwayFromZero),
                centre.Y + (int)Math.Round(d.Y * radius, MidpointRounding.AwayFromZero)
            )),
        ];

    /// <summary>Unit vectors all round; their number is a power of two, at least four.</summary>
    internal static ImmutableArray<(double X, double Y)> Directions(int count)
    {
        ImmutableArray<(double X, double Y)> round = [(1, 0), (0, 1), (-1, 0), (0, -1)];
        while (round.Length < count)
        {
            var finer = ImmutableArray.CreateBuilder<(double, double)>();
            for (var i = 0; i < round.Length; i++)
            {
                var (a, b) = (round[i], round[(i + 1) % round.Length]);
                var (x, y) = (a.X + b.X, a.Y + b.Y);
                var length = Math.Sqrt((x * x) + (y * y));
                finer.Add(a);
                finer.Add((x / length, y / length));
            }
            round = finer.ToImmutable();
        }
        return round;
    }
}
