using Splitter.Geometry;

namespace Splitter.Planning.Fit;

/// <summary>
/// What corners that are not set exactly do to a hooping: TRE²(r) = FLE²/N · (1 + r²/(2 f²)) at a place r from their
/// centroid, with f² the mean squared distance of the N corners from it and FLE the total error of setting one:
/// Fitzpatrick, West and Maurer 1998, IEEE TMI 17(5):694-702, in its 2-D form.
/// </summary>
internal static class CornerFit
{
    /// <summary>An accuracy of which a corner's total error is one.</summary>
    internal static readonly double OneInAll = Math.Sqrt(0.5);

    /// <summary>Mean squared misfit at a place, in squared units of the accuracy.</summary>
    /// <param name="corners">At least two places.</param>
    /// <param name="accuracy">
    /// How closely one corner is set: one standard deviation per axis, so that FLE² is twice its square.
    /// </param>
    internal static double Variance(ReadOnlySpan<Point> corners, double accuracy, Point at)
    {
        var (x, y, spread) = Spread(corners);
        var away = Squared(at.X - corners[0].X - x) + Squared(at.Y - corners[0].Y - y);
        return accuracy * accuracy * ((2.0 / corners.Length) + (away / spread));
    }

    /// <summary>
    /// Squared error at the receiver's farthest corner, in squared errors of setting one corner, before anything is
    /// known of seams: two corners as far apart as the common ground allows.
    /// </summary>
    internal static double FarthestError(Box common, Box receiver)
    {
        double x = Math.Max(common.Centre.X - receiver.Left, receiver.Right - common.Centre.X);
        double y = Math.Max(common.Centre.Y - receiver.Top, receiver.Bottom - common.Centre.Y);
        var farthest = common.Centre + new Point((int)x, (int)y);
        return Variance([new(common.Left, common.Top), new(common.Right, common.Bottom)], OneInAll, farthest);
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
