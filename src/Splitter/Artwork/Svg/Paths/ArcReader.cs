namespace Splitter.Artwork.Svg.Paths;

/// <summary>From an arc's end points to its centre (SVG 1.1, appendix F.6).</summary>
internal static class ArcReader
{
    internal static void Add(Subpath path, Spot radii, double degrees, bool large, bool clockwise, Spot end)
    {
        var start = path.End;
        if (start == end)
            return;
        var (rx, ry) = (Math.Abs(radii.X), Math.Abs(radii.Y));
        if (rx == 0 || ry == 0)
        {
            path.Line(end);
            return;
        }
        var turn = Matrix.Rotate(degrees);
        var (u, v) = (new Spot(turn.A, turn.B), new Spot(turn.C, turn.D));

        // Half the chord, along the ellipse's axes and in units of its radii.
        var half = 0.5 * (start - end);
        var (x, y) = (Dot(half, u) / rx, Dot(half, v) / ry);
        var reach = (x * x) + (y * y);
        if (reach > 1)
        {
            // Radii too short for the chord grow until they reach (F.6.6).
            var grow = Math.Sqrt(reach);
            (rx, ry, x, y, reach) = (rx * grow, ry * grow, x / grow, y / grow, 1);
        }
        var away = reach == 0 ? 0 : Math.Sqrt(Math.Max(0, (1 - reach) / reach)) * (large == clockwise ? -1 : 1);
        var (cx, cy) = (away * y, -away * x);
        (u, v) = (rx * u, ry * v);
        var centre = start.Towards(end, 0.5) + (cx * u) + (cy * v);
        var from = Math.Atan2(y - cy, x - cx);
        var sweep = Math.Atan2(-y - cy, -x - cx) - from;
        if (clockwise && sweep < 0)
            sweep += 2 * Math.PI;
        else if (!clockwise && sweep > 0)
            sweep -= 2 * Math.PI;
        if (centre.IsFinite && double.IsFinite(sweep) && u.IsFinite && v.IsFinite)
            path.Arc(new(centre, u, v, from, sweep, end));
        else
            path.Line(end);
    }

    /// <summary>
    /// A quarter of an ellipse whose axes lie along x and y; quarters count clockwise on the drawing from +x.
    /// </summary>
    internal static void AddQuarter(Subpath path, Spot centre, Spot radii, int quarter)
    {
        var end = (quarter & 3) switch
        {
            0 => new Spot(centre.X, centre.Y + radii.Y),
            1 => new Spot(centre.X - radii.X, centre.Y),
            2 => new Spot(centre.X, centre.Y - radii.Y),
            _ => new Spot(centre.X + radii.X, centre.Y),
        };
        path.Arc(new(centre, new(radii.X, 0), new(0, radii.Y), quarter * Math.PI / 2, Math.PI / 2, end));
    }

    private static double Dot(Spot a, Spot b) => (a.X * b.X) + (a.Y * b.Y);
}
