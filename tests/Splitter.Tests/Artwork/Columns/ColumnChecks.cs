using Splitter.Artwork;
using Splitter.Geometry;
using Point = Splitter.Geometry.Point;

namespace Splitter.Tests.Artwork.Columns;

/// <summary>What must hold for columns whatever made them.</summary>
internal static class ColumnChecks
{
    /// <summary>At least 97 % of the ground is covered and at most 2 % beside it, counted on a grid of points, not by overlay.</summary>
    internal static void Fit(Region ground, IEnumerable<Column> columns)
    {
        var quads = columns.SelectMany(c => c.Rungs.Zip(c.Rungs.Skip(1))).ToList();
        var box = ground.Bounds.Grown(1000);
        var step = (int)Math.Max(40, Math.Sqrt(ground.Area / 40_000));
        var inside = Polygons.Containment(ground);
        int all = 0,
            covered = 0,
            beside = 0;
        for (var y = box.Top; y < box.Bottom; y += step)
        {
            // Off the whole steps, so that no row of points runs along an edge.
            var near = quads
                .Where(q =>
                    Box.Around([q.First.Left, q.First.Right, q.Second.Left, q.Second.Right]) is var b
                    && b.Top <= y
                    && b.Bottom >= y
                )
                .ToList();
            for (var x = box.Left + 7; x < box.Right; x += step)
            {
                var hit = near.Exists(q => Holds(q.First, q.Second, new(x, y)));
                if (inside(x, y))
                    (all, covered) = (all + 1, covered + (hit ? 1 : 0));
                else if (hit)
                    beside++;
            }
        }
        Assert.True(covered >= 0.97 * all, $"{100.0 * covered / all:0.0} % is covered");
        Assert.True(beside <= 0.02 * all, $"{100.0 * beside / all:0.0} % lies beside");
    }

    /// <summary>No rung crosses its neighbours.</summary>
    internal static void KeepOrder(IEnumerable<Column> columns)
    {
        foreach (var column in columns)
        {
            Assert.True(column.Rungs.Length >= 2);
            foreach (var (a, b) in column.Rungs.Zip(column.Rungs.Skip(1)))
                Assert.False(Cross(a, b), $"{a} crosses {b}");
        }
    }

    /// <summary>The first and the last rung lie within 0.3 mm of the outline along their whole length, as at a square end.</summary>
    internal static void EndOnOutline(Region ground, IEnumerable<Column> columns)
    {
        var inner = Polygons.Offset(ground, -300);
        foreach (var rung in columns.SelectMany(c => new[] { c.Rungs[0], c.Rungs[^1] }))
            Assert.True(Polygons.Distance(inner, rung.Middle) > 0, $"{rung.Middle} lies inside");
    }

    private static bool Cross(Rung a, Rung b) =>
        Side(a.Left, a.Right, b.Left) * Side(a.Left, a.Right, b.Right) < 0
        && Side(b.Left, b.Right, a.Left) * Side(b.Left, b.Right, a.Right) < 0;

    private static bool Holds(Rung a, Rung b, Point p) =>
        InTriangle(a.Left, b.Left, b.Right, p) || InTriangle(a.Left, b.Right, a.Right, p);

    private static bool InTriangle(Point a, Point b, Point c, Point p)
    {
        var (ab, bc, ca) = (Side(a, b, p), Side(b, c, p), Side(c, a, p));
        return (ab >= 0 && bc >= 0 && ca >= 0) || (ab <= 0 && bc <= 0 && ca <= 0);
    }

    private static int Side(Point a, Point b, Point p) =>
        Math.Sign((((long)b.X - a.X) * ((long)p.Y - a.Y)) - (((long)b.Y - a.Y) * ((long)p.X - a.X)));
}
