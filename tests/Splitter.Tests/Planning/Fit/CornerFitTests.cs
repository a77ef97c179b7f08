using Splitter.Geometry;
using Splitter.Planning.Fit;

namespace Splitter.Tests.Planning.Fit;

/// <summary>The formula of Fitzpatrick, West and Maurer in numbers that one can reckon in one's head.</summary>
public sealed class CornerFitTests
{
    private static readonly Point[] TenApart = [new(40, 7), new(50, 7)];

    /// <summary>With an accuracy of 3 in the middle of two corners 2 · 9 / 2; each (10/2)² aside half as much more.</summary>
    [Theory]
    [InlineData(45, 7, 9)]
    [InlineData(40, 7, 13.5)]
    [InlineData(50, 7, 13.5)]
    [InlineData(45, 12, 13.5)]
    [InlineData(45, 2, 13.5)]
    [InlineData(55, 7, 27)]
    [InlineData(48, 11, 13.5)]
    public void ErrorsGrowAwayFromTheMiddle(int x, int y, double variance) =>
        Assert.Equal(variance, CornerFit.Variance(TenApart, 3, new(x, y)), 9);

    /// <summary>Three corners, and four of a square of which they are one half.</summary>
    [Fact]
    public void MoreCornersHoldBetter()
    {
        Point[] corners = [new(0, 0), new(6, 0), new(0, 6)];
        Assert.Equal((2.0, 2.0, 48.0), CornerFit.Spread(corners));
        Assert.Equal(2.0 / 3, CornerFit.Variance(corners, 1, new(2, 2)), 9);
        Assert.Equal(0.5, CornerFit.Variance([.. corners, new(6, 6)], 1, new(3, 3)), 9);
    }

    /// <summary>
    /// Ground of 60 x 80, corners 50 either side of its middle at 30, 40; the farthest corner of the field lies 100 and 120
    /// from that, on whichever side: (1 + 24400 / 5000) / 2.
    /// </summary>
    [Theory]
    [InlineData(0, 0, 130, 160)]
    [InlineData(-70, 0, 60, 160)]
    [InlineData(0, -80, 130, 80)]
    [InlineData(-70, -80, 60, 80)]
    public void TheFarthestPlaceOfAField(int left, int top, int right, int bottom) =>
        Assert.Equal(2.94, CornerFit.FarthestError(new(0, 0, 60, 80), new(left, top, right, bottom)), 9);
}
