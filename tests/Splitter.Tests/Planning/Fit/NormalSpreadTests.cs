using Splitter.Planning.Fit;

namespace Splitter.Tests.Planning.Fit;

/// <summary>How far 19 of 20 errors reach. Standard deviations in µm.</summary>
public sealed class NormalSpreadTests
{
    /// <summary>
    /// Equal axes: Rayleigh's distribution, sqrt(-2 ln 0.05). One axis: the normal distribution's 97.5 % quantile, 1.95996.
    /// Between them: numbers of the double integral over a circle, computed outside this code base, strip by strip.
    /// </summary>
    [Theory]
    [InlineData(1000, 1000, 2448)]
    [InlineData(1000, 0, 1960)]
    [InlineData(0, 1000, 1960)]
    [InlineData(2000, 1000, 4072)]
    [InlineData(1000, 2000, 4072)]
    [InlineData(3000, 1000, 5971)]
    public void NineteenOfTwentyErrorsStayWithin(double x, double y, double radius) =>
        Assert.Equal(radius, NormalSpread.Within95(x * x, y * y, 0), 1.0);

    /// <summary>The same ellipse, whichever way it lies.</summary>
    [Theory]
    [InlineData(30)]
    [InlineData(45)]
    [InlineData(120)]
    public void ATurnChangesNothing(double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var (a, b) = (3000.0 * 3000, 1000.0 * 1000);
        Assert.Equal(
            NormalSpread.Within95(a, b, 0),
            NormalSpread.Within95(
                (a * cos * cos) + (b * sin * sin),
                (a * sin * sin) + (b * cos * cos),
                (a - b) * sin * cos
            ),
            1.0
        );
    }
}
