using Splitter.Artwork;
using Splitter.Correcting;
using Splitter.Diagnostics;
using Splitter.Geometry;

namespace Splitter.Tests.Correcting;

/// <summary>Square to which way a person sees an edge or a line run.</summary>
public sealed class EdgeDirectionTests
{
    [Theory]
    [InlineData(100, 0)]
    [InlineData(0, 100)]
    [InlineData(60, 80)]
    [InlineData(-70, 20)]
    public void OfALineItIsSquareToTheLine(int x, int y)
    {
        var line = new Polyline([Point.FromMillimetres(-x, -y), Point.FromMillimetres(x, y)]);
        var across = EdgeDirection.Across(Run(line), new(300, 0));
        Assert.Equal(1, across.Length, 6);
        Assert.Equal(0, Vector.Dot(across, new Vector(x, y).Unit), 3);
    }

    /// <summary>Outlines of what was found in stitches go in steps; a person sees the slope.</summary>
    [Fact]
    public void StepsOfAnOutlineDoNotCount()
    {
        var steps = Enumerable
            .Range(-20, 41)
            .SelectMany(i => new[] { new Point(i * 500, i * 500), new((i + 1) * 500, i * 500) });
        var across = EdgeDirection.Across(Run(new([.. steps])), default);
        Assert.InRange(Math.Abs(Vector.Dot(across, new Vector(1, 1).Unit)), 0, 0.1);
    }

    /// <summary>A line that turns by a quarter under the cross: both legs are seen alike, and none of them further than it goes.</summary>
    [Fact]
    public void OfACornerItIsSquareToTheWayBetweenItsLegs()
    {
        var across = EdgeDirection.Across(Run(new([new(-3000, 0), default, new(0, 3000)])), default);
        Assert.Equal(Math.Sqrt(0.5), Math.Abs(across.X), 6);
        Assert.Equal(-across.X, across.Y, 6);
    }

    private static RunShape Run(Polyline line) =>
        new()
        {
            Id = "line",
            Place = Place.Whole("drawing"),
            Thread = 0,
            Style = new(),
            Footprint = Region.Empty,
            Lines = [line],
        };
}
