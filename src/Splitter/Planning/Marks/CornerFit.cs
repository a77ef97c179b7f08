using Splitter.Geometry;

namespace Splitter.Planning.Marks;

/// <summary>
/// What corners that are not set exactly do to a hooping: TRE²(r) = FLE²/N · (1 + r²/(2 f²)) at a place r from their
/// centroid, with f² the mean squared distance of the N corners from it and FLE the total error of setting one:
/// Fitzpatrick, West and Maurer 1998, IEEE TMI 17(5):694-702, in its 2-D form.
/// </summary>
internal static class CornerFit
{
    /// <summary>Mean squared misfit at a place, in squared units of the accuracy.</summary>
    /// <param name="corners">At least two places.</param>
    /// <param name="accuracy">How closely one corner is set: one standard deviation per axis, so that FLE² is twice its square.</param>
    internal static double Variance(ReadOnlySpan<Point> corners, double accuracy, Point at)
    {
        var (x, y, spread) = Spread(corners);
        var away = Squared(at.X - corners[0].X - x) + Squared(at.Y - corners[0].Y - y);
        return accuracy * accuracy * ((2.0 / corners.Length) + (away / spread));
    }

    /// <summary>The centroid, from the first corner, and the sum of the squared distances from it: N f².</summary>
    internal static (double X, double Y, double Spread) Spread(ReadOnlySpan<Point> corners)
    {
        var (x, y, spread) = (0.0, 0.0, 0.0);
        foreach (var corner in corners)
            (x, y) = (x + (corner.X - corners[0].X), y + (corner.Y - corners[0].Y));
        (x, y) = (x / corners.Length, y / corners.Length);
        foreach (var corner in corners)
            spread += Squared(corner.X - corners[0].X - x) + Squared(corner.Y - corners[0].Y - y);
        return (x, y, spread);
    }

    private static double Squared(double value) => value * value;
}
