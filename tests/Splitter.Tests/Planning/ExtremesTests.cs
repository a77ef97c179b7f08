using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Tests.Planning;

public sealed class ExtremesTests
{
    /// <summary>An octagon around 50, 50 whose corners lie farthest one way each, among places inside it.</summary>
    [Fact]
    public void ThePlacesFarthestInEightDirectionsStandForAll()
    {
        Point[] octagon =
        [
            new(10, 50),
            new(20, 20),
            new(20, 80),
            new(50, 10),
            new(50, 90),
            new(80, 20),
            new(80, 80),
            new(90, 50),
        ];
        Point[] inside = [new(50, 50), new(30, 30), new(70, 30), new(30, 70), new(70, 70), new(15, 50), new(50, 85)];
        Assert.Equal(octagon, Extremes.Of(inside.Concat(octagon)));
    }

    [Fact]
    public void OfABoxItsCorners() =>
        Assert.Equal<Point>([new(1, 2), new(3, 2), new(1, 4), new(3, 4)], Extremes.Of(new Box(1, 2, 3, 4)));
}
