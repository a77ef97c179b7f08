using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Checking;

/// <summary>Where on the drawing a few stitches changed and nothing around them: what an eye would miss.</summary>
internal static class ChangedSpots
{
    /// <summary>Changes belong together when they lie in squares beside each other, µm: within 4 to 8 mm.</summary>
    private const int Square = 4 * Units.Millimetre;

    /// <summary>Half the diagonal of a change that is seen without being pointed at, µm.</summary>
    private const int Plain = 10 * Units.Millimetre;

    /// <summary>Around a changed stitch, µm: a ring hides nothing of what it points at.</summary>
    private const int Clear = 3 * Units.Millimetre;

    /// <summary>Rings around them, row by row.</summary>
    internal static ImmutableArray<(Point Centre, int Radius)> Of(IEnumerable<SewnStitch> changed)
    {
        ImmutableArray<Point> points = [.. changed.SelectMany(Along)];
        var islands = new CellIslands(points.SelectMany(Near).Distinct().OrderBy(c => c.Row).ThenBy(c => c.Column));
        return
        [
            .. points
                .GroupBy(p => islands.Of(CellOf(p.X, p.Y)))
                .Select(Box.Around)
                .Select(box => (box.Centre, Radius: (int)new Point(box.Left, box.Top).DistanceTo(box.Centre)))
                .Where(spot => spot.Radius <= Plain)
                .Select(spot => (spot.Centre, spot.Radius + Clear))
                .Order(),
        ];
    }

    /// <summary>So close that each lies in the squares of the next, too.</summary>
    private static IEnumerable<Point> Along(SewnStitch stitch)
    {
        var steps = 1 + (int)(stitch.From.DistanceTo(stitch.To) / (Square / 2));
        return Enumerable.Range(0, steps + 1).Select(i => stitch.From.Towards(stitch.To, (double)i / steps));
    }

    /// <summary>The square of a point and the three that it is nearest to: a slanting line has no gap.</summary>
    private static IEnumerable<Cell> Near(Point p) =>
        from x in (int[])[-1, 1]
        from y in (int[])[-1, 1]
        select CellOf(p.X + (x * Square / 2), p.Y + (y * Square / 2));

    private static Cell CellOf(int x, int y) => new(Down(x), Down(y));

    private static int Down(int length) => (int)Math.Floor((double)length / Square);
}
