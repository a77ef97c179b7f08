using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fit;

/// <summary>A hooping as it happens, turns and all; nothing of the prediction's code is used.</summary>
internal static class SimulatedHooping
{
    /// <summary>The rigid move that fits marks to where they were set, and cloth that strains away from the nearest mark.</summary>
    internal static Func<Point, (double X, double Y)> Set(
        Point[] marks,
        (double X, double Y)[] set,
        Stretch stretch,
        Normals normal
    )
    {
        var (mx, my) = (marks.Average(p => (double)p.X), marks.Average(p => (double)p.Y));
        var (sx, sy) = (set.Average(p => p.X), set.Average(p => p.Y));
        var (dot, cross) = (0.0, 0.0);
        for (var i = 0; i < set.Length; i++)
        {
            var (ax, ay, bx, by) = (marks[i].X - mx, marks[i].Y - my, set[i].X - sx, set[i].Y - sy);
            dot += (ax * bx) + (ay * by);
            cross += (ax * by) - (ay * bx);
        }
        var (sin, cos) = Math.SinCos(Math.Atan2(cross, dot));
        // The strain tensor in the directions of warp and weft.
        var (warp, weft, bias) = (
            stretch.Warp * normal.Next(),
            stretch.Weft * normal.Next(),
            stretch.Bias * normal.Next()
        );
        var grain = stretch.WarpDirection * Math.PI / 180;
        var (wx, wy) = (Math.Cos(grain), Math.Sin(grain));
        return p =>
        {
            var nearest = marks.MinBy(m => m.DistanceTo(p));
            var (ex, ey) = (p.X - (double)nearest.X, p.Y - (double)nearest.Y);
            var (along, across) = ((ex * wx) + (ey * wy), (ey * wx) - (ex * wy));
            var (a, b) = ((warp * along) + (bias * across), (weft * across) + (bias * along));
            return (
                sx + ((p.X - mx) * cos) - ((p.Y - my) * sin) + (a * wx) - (b * wy),
                sy + ((p.X - mx) * sin) + ((p.Y - my) * cos) + (a * wy) + (b * wx)
            );
        };
    }
}

/// <summary>Standard normal numbers by Box and Muller 1958 from a seed.</summary>
internal sealed class Normals(int seed)
{
    private readonly Random random = new(seed);

    internal double Next() =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>A place in micrometres as the tape has it, wherever in its grid the stitch happens to lie.</summary>
    internal double OnTape(double place)
    {
        var shift = 100 * random.NextDouble();
        return (100 * Math.Round((place + shift) / 100)) - shift;
    }
}
