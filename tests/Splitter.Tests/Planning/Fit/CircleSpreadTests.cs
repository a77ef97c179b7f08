using Splitter.Planning.Fit;

namespace Splitter.Tests.Planning.Fit;

/// <summary>
/// A circle that holds three places, of which two err from the first, 19 times in 20. Where both errors are one, the circle has
/// the size of that one error, whose length has Rayleigh's distribution: it stays within sqrt(-2 ln 0.05) deviations.
/// </summary>
public sealed class CircleSpreadTests
{
    private const double Rayleigh = 2.4477;

    /// <summary>As near to one error as numbers allow: the spread has to be positive definite.</summary>
    private const double Little = 1e-9;

    /// <param name="second">The second place's error as a multiple of the first one's.</param>
    [Theory]
    [InlineData(1, 1)]
    [InlineData(0, 1)]
    [InlineData(0.5, 1)]
    [InlineData(-1, 2)]
    [InlineData(3, 3)]
    [InlineData(-2, 3)]
    public void OneErrorHasItsOwnSize(double second, double size) =>
        Assert.Equal(size * Rayleigh, CircleSpread.Within95(Joint(1, second)), size * 0.02);

    [Fact]
    public void ThreeTimesTheErrorNeedsThreeTimesTheCircle() =>
        Assert.Equal(3, CircleSpread.Within95(Independent(9, 9)) / CircleSpread.Within95(Independent(1, 1)), 1e-4);

    /// <summary>
    /// The circle is as large as two independent places are apart, whose error is the root of 2 times that of either, and no
    /// larger than both errors end to end: the root of 2 times their common length, of which the square has a chi-square
    /// distribution with four degrees of freedom, 9.488 at 95 %.
    /// </summary>
    [Fact]
    public void ASecondErrorWidensTheCircle() =>
        Assert.InRange(CircleSpread.Within95(Independent(1, 1)), Math.Sqrt(2) * Rayleigh, Math.Sqrt(2 * 9.488));

    /// <summary>Errors along one axis alone reach as far as the normal distribution's 97.5 %.</summary>
    [Fact]
    public void AnErrorAlongOneAxisIsNormal()
    {
        var spread = Joint(1, 1);
        for (var row = 1; row < 4; row += 2)
        for (var column = 1; column < 4; column += 2)
            spread[row, column] = row == column ? Little : 0;
        Assert.Equal(1.96, CircleSpread.Within95(spread), 0.04);
    }

    /// <summary>Covariances of x1, y1, x2, y2.</summary>
    private static double[,] Joint(double first, double second)
    {
        var spread = new double[4, 4];
        double[] of = [first, second];
        for (var a = 0; a < 2; a++)
        for (var b = 0; b < 2; b++)
        for (var axis = 0; axis < 2; axis++)
            spread[(2 * a) + axis, (2 * b) + axis] = (of[a] * of[b]) + (a == b ? Little : 0);
        return spread;
    }

    private static double[,] Independent(double first, double second)
    {
        var spread = new double[4, 4];
        for (var k = 0; k < 4; k++)
            spread[k, k] = k < 2 ? first : second;
        return spread;
    }
}
