using Splitter.Correcting;

namespace Splitter.Tests.Correcting;

/// <summary>The table against the distribution itself: its density integrated (Simpson's rule).</summary>
public sealed class ChiSquareTests
{
    [Fact]
    public void EveryPointIsExceededOnceInAHundredTimes()
    {
        for (var degrees = 1; degrees <= ChiSquare.Most; degrees++)
        {
            // Of the root: its density has no pole at nothing.
            var root = Math.Sqrt(ChiSquare.Limit(degrees));
            Assert.InRange(Below(root, degrees), 0.98999, 0.99001);
        }
    }

    /// <summary>The chi distribution: x^(k-1) exp(-x²/2), over its whole integral.</summary>
    private static double Below(double x, int degrees)
    {
        double Density(double t) => Math.Pow(t, degrees - 1) * Math.Exp(-t * t / 2);
        return Integral(Density, x) / Integral(Density, 20);
    }

    private static double Integral(Func<double, double> of, double to)
    {
        const int Steps = 20_000;
        var sum = of(0) + of(to);
        for (var i = 1; i < Steps; i++)
            sum += of(i * to / Steps) * (i % 2 == 1 ? 4 : 2);
        return sum * to / Steps / 3;
    }
}
