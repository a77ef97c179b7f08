namespace Splitter.Correcting;

/// <summary>Sums of squares that chance alone exceeds once in a hundred times.</summary>
internal static class ChiSquare
{
    /// <summary>
    /// Upper 1 % points of the chi-square distribution, for 1 degree of freedom and up: NIST/SEMATECH e-Handbook of
    /// Statistical Methods, 1.3.6.7.4 (from memory; a test computes them anew). A table and no formula: a verdict must
    /// not depend on the last digit of a machine's logarithm. One in a hundred: whoever is told wrongly that cloth has
    /// stretched sets it again for nothing, which takes half an hour.
    /// </summary>
    private static readonly double[] Upper =
    [
        6.635,
        9.210,
        11.345,
        13.277,
        15.086,
        16.812,
        18.475,
        20.090,
        21.666,
        23.209,
        24.725,
        26.217,
        27.688,
        29.141,
        30.578,
        32.000,
        33.409,
        34.805,
        36.191,
        37.566,
    ];

    /// <summary>The largest number of degrees of freedom that there is a point for.</summary>
    internal static int Most => Upper.Length;

    /// <summary>What the sum of squares of so many standard normal errors exceeds once in a hundred times.</summary>
    internal static double Limit(int degrees) => Upper[degrees - 1];
}
