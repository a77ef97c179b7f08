using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Marks;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Marks;

/// <summary>
/// Two territories side by side, 0 and 1, with a fill that is cut between them at 50 mm, and a motif that the third hooping
/// sews whole on the ground of the first.
/// </summary>
public sealed class GroundMapTests
{
    private readonly GroundMap map = new(
        Samples.Drawing(Samples.Rectangle("fill", 10, 10, 80, 30), Samples.Rectangle("motif", 20, 20, 10, 10)),
        new Division(
            [Region.Of(new Box(0, 0, 50_000, 50_000)), Region.Of(new Box(50_000, 0, 100_000, 50_000)), Region.Empty],
            [null, 2],
            [],
            [],
            [],
            new SeamCost(0, 0, 0)
        )
    );

    [Theory]
    [InlineData(30.5, 12.5, 0)]
    [InlineData(70.5, 12.5, 1)]
    [InlineData(25.5, 25.5, 0)]
    [InlineData(49.5, 39.5, 0)]
    [InlineData(50.5, 10.5, 1)]
    [InlineData(5.5, 5.5, null)]
    [InlineData(30.5, 9.5, null)]
    [InlineData(300, 12, null)]
    [InlineData(-1, 12, null)]
    public void StitchingIsThereOnceItsHoopingIsSewn(double x, double y, int? by)
    {
        var at = Point.FromMillimetres(x, y);
        for (var hooping = 0; hooping < 4; hooping++)
            Assert.Equal(by < hooping, map.IsSewnBefore(hooping, at));
    }

    [Fact]
    public void OnlyHoopingsInBetweenCoverACorner()
    {
        var (right, motif) = (Point.FromMillimetres(70.5, 12.5), Point.FromMillimetres(25.5, 25.5));
        Assert.True(map.IsSewnBetween(0, 2, right));
        Assert.False(map.IsSewnBetween(0, 1, right));
        Assert.False(map.IsSewnBetween(1, 2, right));
        Assert.True(map.IsSewnBetween(1, 3, motif));
        Assert.True(map.IsSewnBetween(0, 3, motif));
        Assert.False(map.IsSewnBetween(0, 2, motif));
        Assert.False(map.IsSewnBetween(0, 3, Point.FromMillimetres(-5, -5)));
    }
}
