using Splitter.Correcting;
using Splitter.Geometry;

namespace Splitter.Tests.Correcting;

/// <summary>Least squares of figures small enough to be worked out by hand.</summary>
public sealed class LinearFitTests
{
    private static readonly double[] Ones = [1, 1, 1, 1];
    private static readonly double[] Steps = [0, 1, 2, 3];

    /// <summary>A line through 1, 2, 2 and 5: sums about the means are 6 and 5, so it rises by 1.2 from 0.7.</summary>
    private static readonly double[] Values = [1, 2, 2, 5];

    [Fact]
    public void ALineThroughFourPlaces()
    {
        var fit = new LinearFit(4, Ones, Steps);
        Equal([0.7, 1.2], fit.Coefficients(Values));
        Assert.Equal(2, fit.Left);
    }

    /// <summary>0.3, 0.1, -1.1 and 0.7 are left, and their squares make 1.8.</summary>
    [Theory]
    [InlineData(1, 1.8)]
    [InlineData(4, 0.45)]
    public void WhatIsLeftCountsInStandardDeviations(double variance, double squares) =>
        Assert.Equal(
            squares,
            new LinearFit(4, Ones, Steps).Unexplained(Values, Diagonal(variance, variance, variance, variance)),
            9
        );

    [Fact]
    public void WithoutColumnsNothingIsExplained() =>
        Assert.Equal(
            (1.0 / 1) + (4.0 / 2) + (4.0 / 4) + (25.0 / 5),
            new LinearFit(4).Unexplained(Values, Diagonal(1, 2, 4, 5)),
            9
        );

    /// <summary>One column twice, and one of nothing, say no more than one.</summary>
    [Fact]
    public void AColumnThatSaysNothingOfItsOwnIsLeftOut()
    {
        var fit = new LinearFit(4, Ones, [0, 0, 0, 0], [.. Ones.Select(v => 3 * v)], Steps);
        Equal([0.7, 0, 0, 1.2], fit.Coefficients(Values));
        Assert.Equal(2, fit.Left);
    }

    /// <summary>The weights of each value in the rise, (x - 1.5) / 5, and in the start, 1/4 - 1.5 times that.</summary>
    [Fact]
    public void SharesAreTheWeightsOfEachValue()
    {
        var shares = new LinearFit(4, Ones, Steps).Shares();
        Equal([-0.3, -0.1, 0.1, 0.3], [.. shares.Select(s => s[1])]);
        Equal([0.7, 0.4, 0.1, -0.2], [.. shares.Select(s => s[0])]);
    }

    /// <summary>S = L·L' and v = L·z, so that v'·S⁻¹·v is z'·z: 1 + 4 + 9.</summary>
    [Fact]
    public void SquaredDeviationsTakeCorrelationOut() =>
        Assert.Equal(
            14,
            LinearFit.SquaredDeviations(
                [2, -5, -2],
                new double[,]
                {
                    { 4, 2, -2 },
                    { 2, 10, 5 },
                    { -2, 5, 6 },
                }
            ),
            9
        );

    /// <summary>
    /// Two places on a level line and two above each other, each read with a variance of 1 both ways: who follows a stretch
    /// along x adds x²/Σx² at a place, and nothing across.
    /// </summary>
    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(80, 20, 1.28)]
    [InlineData(-80, 20, 1.28)]
    [InlineData(0, 90, 0)]
    public void FollowingAStretchAddsToErrorsAlongIt(int x, int y, double added)
    {
        Vector[] places = [new(-50, 0), new(50, 0), new(0, 30), new(0, -30)];
        Func<Vector, Vector>[] moves = [_ => new(1, 0), _ => new(0, 1), p => new(-p.Y, p.X), p => new(p.X, 0)];
        double[][] columns = [.. moves.Select(m => places.SelectMany(p => new[] { m(p).X, m(p).Y }).ToArray())];
        var followed = new FollowedSpread(
            moves,
            new LinearFit(8, columns[..3]),
            new LinearFit(8, columns),
            Diagonal(1, 1, 1, 1, 1, 1, 1, 1)
        ).At(new(x, y));
        Equal([added, 0, 0], [followed.XX, followed.XY, followed.YY]);
    }

    private static double[,] Diagonal(params double[] variances)
    {
        var spread = new double[variances.Length, variances.Length];
        for (var i = 0; i < variances.Length; i++)
            spread[i, i] = variances[i];
        return spread;
    }

    private static void Equal(double[] expected, double[] found)
    {
        Assert.Equal(expected.Length, found.Length);
        foreach (var (one, other) in expected.Zip(found))
            Assert.Equal(one, other, 9);
    }
}
