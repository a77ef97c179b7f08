namespace Splitter.Tests.Planning.Fit;

/// <summary>
/// The smallest circle that holds a few places: of all circles on two of them as a diameter and through three of them the
/// smallest that holds the others (Elzinga and Hearn 1972, Management Science 19(1):96-104: no other can be it).
/// </summary>
internal static class EnclosingCircle
{
    /// <summary>Of what is nearly on the circle nothing is outside, µm.</summary>
    private const double OnCircle = 1e-6;

    internal static double Diameter((double X, double Y)[] places)
    {
        var least = double.PositiveInfinity;
        for (var i = 0; i < places.Length; i++)
        for (var j = i + 1; j < places.Length; j++)
        {
            var (a, b) = (places[i], places[j]);
            Try(((a.X + b.X) / 2, (a.Y + b.Y) / 2), a);
            for (var k = j + 1; k < places.Length; k++)
                if (Through(a, b, places[k]) is { } middle)
                    Try(middle, a);
        }
        return 2 * least;

        void Try((double X, double Y) middle, (double X, double Y) on)
        {
            var radius = Distance(middle, on);
            if (radius < least && Array.TrueForAll(places, p => Distance(p, middle) <= radius + OnCircle))
                least = radius;
        }
    }

    private static double Distance((double X, double Y) a, (double X, double Y) b) =>
        Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)));

    /// <summary>As far from all three: two linear equations; none where they lie on a line.</summary>
    private static (double X, double Y)? Through((double X, double Y) a, (double X, double Y) b, (double X, double Y) c)
    {
        var (bx, by, cx, cy) = (b.X - a.X, b.Y - a.Y, c.X - a.X, c.Y - a.Y);
        var twice = 2 * ((bx * cy) - (by * cx));
        if (twice == 0)
            return null;
        var (bb, cc) = ((bx * bx) + (by * by), (cx * cx) + (cy * cy));
        return (a.X + (((cy * bb) - (by * cc)) / twice), a.Y + (((bx * cc) - (cx * bb)) / twice));
    }
}
