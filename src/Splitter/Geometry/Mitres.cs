namespace Splitter.Geometry;

/// <summary>The pointed outer corners of a stroke whose bends are bevelled.</summary>
internal static class Mitres
{
    /// <summary>
    /// Tips that reach less than this past their bevel, µm, are left away: a flattened curve is full of them.
    /// </summary>
    private const double LeastTip = 2;

    /// <param name="half">Half the stroke's width, µm.</param>
    /// <param name="limit">
    /// SVG's <c>stroke-miterlimit</c>: the longest mitre, in widths; a longer one stays a bevel.
    /// </param>
    /// <returns>
    /// For each bend that gets one: from the bend to one end of its bevel, the tip, and the other end.
    /// </returns>
    internal static IEnumerable<Ring> Tips(Polyline path, double half, double limit)
    {
        var points = path.Points.Where((p, i) => i == 0 || p != path.Points[i - 1]).ToList();
        var closed = path.IsClosed && points.Count > 3;
        for (var i = closed ? 0 : 1; i < points.Count - 1; i++)
        {
            var before = points[i > 0 ? i - 1 : points.Count - 2];
            var (at, after) = (points[i], points[i + 1]);
            double inX = at.X - (double)before.X,
                inY = at.Y - (double)before.Y,
                outX = after.X - (double)at.X,
                outY = after.Y - (double)at.Y;
            var turn = (inX * outY) - (inY * outX);
            if (turn == 0)
                continue;

            // Normals towards the outer side of the bend, half a width long.
            var (toIn, toOut) = (
                Math.Sign(turn) * half / before.DistanceTo(at),
                Math.Sign(turn) * half / at.DistanceTo(after)
            );
            double aX = inY * toIn,
                aY = -inX * toIn,
                bX = outY * toOut,
                bY = -outX * toOut;
            var shared = 1 + (((aX * bX) + (aY * bY)) / (half * half));
            var length = Math.Sqrt(2 / shared);
            if (!(length <= limit) || half * (length - (1 / length)) < LeastTip)
                continue;
            yield return new([
                at,
                Snap(at, aX, aY),
                Snap(at, (aX + bX) / shared, (aY + bY) / shared),
                Snap(at, bX, bY),
            ]);
        }
    }

    private static Point Snap(Point at, double x, double y) =>
        new(
            (int)Math.Round(at.X + x, MidpointRounding.AwayFromZero),
            (int)Math.Round(at.Y + y, MidpointRounding.AwayFromZero)
        );
}
