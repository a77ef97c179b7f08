using CsCheck;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

/// <summary>Corners of smoothed seams: cut off 1.5 mm before and after, and on short legs half a leg.</summary>
public sealed class RoundedCornerTests
{
    /// <summary>A quadratic curve goes half way from the middle of its ends to its corner: 1.5 mm and 1.5 mm make 0.375 each way.</summary>
    [Fact]
    public void ASquareCornerIsCutOff()
    {
        var curve = ArcSmoother.Rounded(new(-20_000, 0), default, new(0, 20_000));
        Assert.Equal((new Point(-1500, 0), new Point(0, 1500)), (curve[0], curve[^1]));
        Assert.Equal(new Point(-375, 375), curve[curve.Length / 2]);
        var tight = ArcSmoother.Rounded(new(-2000, 0), default, new(0, 1000));
        Assert.Equal((new Point(-1000, 0), new Point(0, 500)), (tight[0], tight[^1]));
    }

    /// <summary>From 15 degrees on, and one that goes all but back is the sharpest of all.</summary>
    [Theory]
    [InlineData(0, false)]
    [InlineData(14, false)]
    [InlineData(16, true)]
    [InlineData(90, true)]
    [InlineData(170, true)]
    public void HardlyATurnIsLeftAsItIs(int degrees, bool isRounded)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var curve = ArcSmoother.Rounded(new(-20_000, 0), default, new Vector(20_000 * cos, 20_000 * sin).From(default));
        Assert.Equal(isRounded, curve.Length > 1);
        if (!isRounded)
            Assert.Equal([default(Point)], curve);
    }

    /// <summary>A curve lies between its legs: within the triangle of its ends and the corner, and the same backwards.</summary>
    [Fact]
    public void ACurveStaysBetweenItsLegs() =>
        Gen.Int[-9000, 9000]
            .Array[4]
            .Where(c => (c[0], c[1]) != (0, 0) && (c[2], c[3]) != (0, 0))
            .Holds(c =>
            {
                var (before, after) = (new Point(c[0], c[1]), new Point(c[2], c[3]));
                var curve = ArcSmoother.Rounded(before, default, after);
                Assert.Equal(curve, ArcSmoother.Rounded(after, default, before).Reverse());
                var triangle = Box.Around([curve[0], default, curve[^1]]).Grown(1);
                Assert.All(curve, p => Assert.True(triangle.Contains(p), $"{p}"));
            });
}
