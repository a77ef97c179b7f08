using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

/// <summary>A fill of 100 x 50 mm with a hole of 20 x 20 in its middle; seams follow its edges 0.2 mm outside of it.</summary>
public sealed class OutlinesTests
{
    private static readonly Outlines Edges = Outlines.Of(
        Samples.Drawing(
            Samples.Fill(
                "plate",
                Polygons.Subtract(
                    Samples.Ground(10, 10, 110, 10, 110, 60, 10, 60),
                    Samples.Ground(50, 25, 70, 25, 70, 45, 50, 45)
                )
            )
        )
    );

    /// <param name="toX">In whole 0.1 mm, as all here.</param>
    [Theory]
    [InlineData(500, 101, 500, 98)]
    [InlineData(500, 92, 500, 98)]
    [InlineData(300, 600, 300, 602)]
    [InlineData(100, 300, 98, 300)]
    [InlineData(1105, 300, 1102, 300)]
    [InlineData(505, 300, 502, 300)] // The hole's edges, from within.
    [InlineData(600, 441, 600, 448)]
    public void TheNearestPlaceLiesBesideTheEdge(int x, int y, int toX, int toY) =>
        Assert.InRange(Near(x, y).At.DistanceTo(new(toX * 100, toY * 100)), 0, 2);

    [Fact]
    public void WhatIsFarOffIsNotFollowed()
    {
        Assert.Null(Edges.Nearest(0, new(50_000, 8_500), 1200));
        Assert.Null(Edges.Nearest(0, new(60_000, 35_000), 1200));
        Assert.NotNull(Edges.Nearest(0, new(50_000, 8_500), 1500));
    }

    /// <summary>10 mm either side of each corner: 20.4 mm round it, both ways, wherever the outline begins.</summary>
    [Theory]
    [InlineData(200, 98, 98, 200)]
    [InlineData(1000, 98, 1102, 200)]
    [InlineData(1102, 500, 1000, 602)]
    [InlineData(200, 602, 98, 500)]
    public void AWayRoundACorner(int x, int y, int toX, int toY)
    {
        foreach (var (from, to) in new[] { (Near(x, y), Near(toX, toY)), (Near(toX, toY), Near(x, y)) })
        {
            Assert.Same(from.Ring, to.Ring);
            var way = Outlines.Between(from.Ring!, from, to);
            Assert.Equal((from.At, to.At), (way[0], way[^1]));
            Assert.InRange(Outlines.Length(way), 20_200, 20_400);
        }
    }

    [Fact]
    public void AWayAlongOneSideIsStraight()
    {
        var (from, to) = (Near(900, 98), Near(300, 98));
        Assert.Equal([from.At, to.At], Outlines.Between(from.Ring!, from, to));
        Assert.Equal([to.At, from.At], Outlines.Between(from.Ring!, to, from));
    }

    /// <summary>The hole has a ring of its own.</summary>
    [Fact]
    public void NoWayLeadsFromOneRingToAnother() => Assert.NotSame(Near(505, 300).Ring, Near(100, 300).Ring);

    private static Outlines.Place Near(int x, int y) => Edges.Nearest(0, new(x * 100, y * 100), 1200)!.Value;
}
