namespace Splitter.Planning.Fit;

/// <summary>How far from its mean a normal error in the plane lies.</summary>
internal static class NormalSpread
{
    private const double Share = 0.95;

    /// <summary>
    /// Directions in a quarter turn over which the share is averaged: the sum is exact to 1e-6 for any shape.
    /// </summary>
    private const int Directions = 256;

    /// <summary>Halvings of the interval: from a quarter of the spread to a ten-millionth of it.</summary>
    private const int Halvings = 22;

    /// <summary>Equal axes: Rayleigh's distribution, sqrt(-ln 0.05) times the root mean square.</summary>
    private const double Least = 1.73;

    /// <summary>One axis only: the normal distribution's 97.5 % quantile.</summary>
    internal const double Most = 1.97;

    private static readonly double[] Cosines =
    [
        .. Enumerable.Range(0, Directions).Select(i => Math.Cos(Math.PI * (i + 0.5) / Directions)),
    ];

    /// <summary>
    /// The distance that 19 of 20 errors stay within, in whole units. Stretched to equal axes the error lies at a
    /// distance d with density d exp(-d²/2) in any direction t, and in truth at d sqrt(a cos² t + b sin² t), with a and
    /// b the variances along the axes; so the share within r is the mean over t of 1 - exp(-r²/(2 (a cos² t + b sin²
    /// t))).
    /// </summary>
    /// <param name="xx">Variance in x.</param>
    /// <param name="yy">Variance in y.</param>
    /// <param name="xy">Their covariance.</param>
    internal static double Within95(double xx, double yy, double xy)
    {
        var (middle, half) = ((xx + yy) / 2, Math.Sqrt(((xx - yy) * (xx - yy) / 4) + (xy * xy)));
        var rms = Math.Sqrt(xx + yy);
        var (low, high) = (Least * rms, Most * rms);
        // Only as long as it may still change which whole number is told.
        for (var i = 0; i < Halvings && Math.Round(low) < Math.Round(high); i++)
        {
            var radius = (low + high) / 2;
            if (ShareWithin(radius, middle, half) < Share)
                low = radius;
            else
                high = radius;
        }
        // Sine and exponential differ in their last digit between machines: whole micrometres do not.
        return Math.Round(high);
    }

    private static double ShareWithin(double radius, double middle, double half)
    {
        var sum = 0.0;
        foreach (var cosine in Cosines)
        {
            // a cos² t + b sin² t by the double angle; half a turn of it is all there is.
            var variance = middle + (half * cosine);
            sum += variance <= 0 ? 1 : 1 - Math.Exp(-radius * radius / (2 * variance));
        }
        return sum / Directions;
    }
}
