using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

/// <summary>
/// Two fields side by side, 100 x 100 mm together, share a strip of 20 mm in the middle, 40 to 60 mm. All is sewn but for
/// the ground above 10 mm and below 90. Places in tenths of a millimetre.
/// </summary>
public sealed class SeamRoomTests
{
    private static readonly ImmutableArray<Box> Grounds =
    [
        new(0, 0, 60_000, 100_000),
        new(40_000, 0, 100_000, 100_000),
    ];

    /// <summary>An overlap that is worked out wants 1 mm, and has ample room with 3 mm.</summary>
    private static readonly SeamRoom Room = new(Grounds, null, IsSewn);

    [Theory]
    [InlineData(500, 10_000, 10_000)]
    [InlineData(450, 5_000, 15_000)]
    [InlineData(580, 2_000, 18_000)]
    [InlineData(600, 0, 20_000)]
    public void EachSideIsSewnOnToTheEdgeOfItsGround(int x, int narrower, int wider) =>
        Assert.Equal(new SideRoom(narrower, wider), SeamRoom.Between(Grounds, 0, 1, At(x, 500), IsSewn));

    /// <summary>The same for fields one above the other.</summary>
    [Fact]
    public void SoIsEachSideBelowAndAbove()
    {
        ImmutableArray<Box> stacked = [new(0, 0, 100_000, 60_000), new(0, 40_000, 100_000, 100_000)];
        Assert.Equal(new SideRoom(7_000, 13_000), SeamRoom.Between(stacked, 1, 0, At(500, 530), IsSewn));
        Assert.Equal(new SideRoom(4_000, 16_000), SeamRoom.Between(stacked, 0, 1, At(500, 440), IsSewn));
    }

    [Fact]
    public void WhereNothingIsSewnThereIsNoEnd() =>
        Assert.Equal(new SideRoom(int.MaxValue, int.MaxValue), SeamRoom.Between(Grounds, 0, 1, At(500, 50), IsSewn));

    [Theory]
    [InlineData(30, 50, 30)]
    [InlineData(55, 50, 5)]
    [InlineData(30, 8, 8)]
    [InlineData(30, 96, 4)]
    [InlineData(2, 50, 2)]
    public void HowFarAPlaceLiesInside(double x, double y, double from) =>
        Assert.Equal(from, Room.FromEdge(0, x * 1000, y * 1000) / 1000, 9);

    [Fact]
    public void InTheMiddleThereIsAmpleRoom()
    {
        Assert.Equal(new Box(43_000, 3_000, 57_000, 97_000), Room.Ample(0, 1));
        Assert.Equal(new Box(45_000, 5_000, 55_000, 95_000), new SeamRoom(Grounds, 5_000, IsSewn).Ample(0, 1));
    }

    /// <summary>3 at the very edge, less inwards in a straight line, and 30 more with less than 1 mm.</summary>
    [Theory]
    [InlineData(570, 0)]
    [InlineData(580, 1)]
    [InlineData(590, 2)]
    [InlineData(594, 32.4)]
    [InlineData(600, 33)]
    public void GroundNearAnEdgeIsDear(int x, double price) => Assert.Equal(price, Room.Shortage(0, At(x, 500)), 9);

    /// <summary>No neighbour lies beyond the outer edge.</summary>
    [Fact]
    public void TheEdgeOfTheWorkIsNot() => Assert.Equal(0, Room.Shortage(0, At(0, 500)), 9);

    /// <summary>
    /// The ground between it and 3 mm of room, at half its price; with less than 1 mm of room that millimetre, too, whichever of
    /// both sides it is that lacks it.
    /// </summary>
    [Theory]
    [InlineData(500, 0)]
    [InlineData(585, 1.125)]
    [InlineData(415, 1.125)]
    [InlineData(600, 34.5)]
    [InlineData(400, 34.5)]
    public void SoIsASeamThere(int x, double price) => Assert.Equal(price, Room.ShortageOfSeam(0, 1, At(x, 500)), 9);

    /// <summary>An overlap of 5 mm that a recipe asks for wants 5 mm of room.</summary>
    [Fact]
    public void AWideOverlapWantsMore() =>
        Assert.Equal(
            (3 * 0.5 * 2.5 / 2) + (30 * 5),
            new SeamRoom(Grounds, 5_000, IsSewn).ShortageOfSeam(0, 1, At(575, 500)),
            9
        );

    /// <summary>15 mm less room than another field cost less than half of what a millimetre's length does.</summary>
    [Fact]
    public void TheMiddleIsPreferredALittle() =>
        Assert.InRange(SeamRoom.Preference(15_000), 0.001, SeamPrice.Length / 2);

    private static bool IsSewn(Point p) => p.Y is > 10_000 and < 90_000;

    private static Point At(int x, int y) => new(x * 100, y * 100);
}
