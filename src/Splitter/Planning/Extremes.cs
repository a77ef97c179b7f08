using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning;

/// <summary>
/// A few places that stand for many: what grows with the square of a distance is largest at the rim.
/// </summary>
internal static class Extremes
{
    private static readonly ImmutableArray<(int X, int Y)> Directions =
    [
        (1, 0),
        (1, 1),
        (0, 1),
        (-1, 1),
        (-1, 0),
        (-1, -1),
        (0, -1),
        (1, -1),
    ];

    /// <summary>The points that lie farthest in eight directions.</summary>
    internal static ImmutableArray<Point> Of(IEnumerable<Point> points)
    {
        var all = points.Order().ToList();
        return [.. Directions.Select(d => all.MaxBy(p => ((long)p.X * d.X) + ((long)p.Y * d.Y))).Distinct().Order()];
    }

    /// <summary>The corners of a box.</summary>
    internal static ImmutableArray<Point> Of(Box box) =>
        [new(box.Left, box.Top), new(box.Right, box.Top), new(box.Left, box.Bottom), new(box.Right, box.Bottom)];
}
