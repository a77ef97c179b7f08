using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Marks;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Marks;

/// <summary>Places for corners, with arms of 8 mm, on ground in millimetres.</summary>
public sealed class CornerGridTests
{
    private static readonly RegistrationRules Rules = new();

    /// <summary>So small that every millimetre of it is looked at. Its first place is at 0.</summary>
    private static readonly Box Small = new(-50, -50, 40_000, 24_000);

    [Fact]
    public void EveryPlaceHasItsArmsOnTheGroundAndOnTheTapesGrid()
    {
        var ground = new Box(10_030, 20_070, 49_940, 45_010);
        var places = All(Grid(ground), ground);
        Assert.Equal(40 * 25, places.Count);
        Assert.All(
            places,
            place =>
            {
                Assert.All([place.At, place.ArmX, place.ArmY], p => Assert.True(ground.Contains(p), $"{place}"));
                Assert.Equal((0, 0), (place.At.X % Units.TapeStep, place.At.Y % Units.TapeStep));
                Assert.Equal(
                    (place.At.Y, place.At.X, 8_000.0, 8_000.0),
                    (place.ArmX.Y, place.ArmY.X, place.At.DistanceTo(place.ArmX), place.At.DistanceTo(place.ArmY))
                );
                Assert.Equal((0, 0, false), (place.Poor, place.Donor, place.IsThere));
            }
        );
        // The outermost places are taken, but for what lies beside the grid.
        Assert.Equal(new Box(10_100, 20_100, 49_100, 44_100), Box.Around(places.Select(p => p.At)));
    }

    [Fact]
    public void WithoutGroundThereIsNoPlace() => Assert.Empty(Grid(Box.Empty).Spread());

    /// <summary>So that a corner is not taken for the one opposite it.</summary>
    [Fact]
    public void ArmsPointToTheMiddleOfTheGround()
    {
        var ground = Small;
        foreach (var place in All(Grid(ground), ground))
            Assert.Equal(
                (place.At.X < 20_000, place.At.Y < 12_000),
                (place.ArmX.X > place.At.X, place.ArmY.Y > place.At.Y)
            );
    }

    /// <summary>Stitching to the right of the middle: arms there are turned away from it, as far as they can be.</summary>
    [Fact]
    public void ArmsLieOnBareClothWhereTheyCan()
    {
        var ground = Small;
        var grid = Grid(ground, isSewn: p => p.X >= 20_000);
        var beside = grid.Around(new(16_000, 12_000), 1).Single(p => p.At == new Point(15_000, 12_000));
        Assert.Equal((new Point(7_000, 12_000), 0), (beside.ArmX, beside.Poor));
        // Nine places of one arm, from the tack to 8 mm from it, and nine of the other.
        var amid = grid.Around(new(31_000, 12_000), 1).Single(p => p.At == new Point(30_000, 12_000));
        Assert.Equal(18, amid.Poor);
        Assert.Equal(18, CornerGrid.Sewn(amid.At, amid.ArmX, amid.ArmY, p => p.X >= 20_000));
    }

    /// <summary>One arm is whole, the other has at least half its length; what it lacks makes it poorer.</summary>
    [Theory]
    [InlineData(5_000, 3)]
    [InlineData(4_000, 4)]
    [InlineData(3_900, null)]
    public void OnAStripTheArmAcrossItIsShortened(int width, int? poor)
    {
        var ground = Small with { Bottom = width };
        var edge = All(Grid(ground), ground).Where(p => p.At is { X: 20_000, Y: 0 }).ToList();
        if (poor is null)
            Assert.Empty(edge);
        else
            Assert.Equal((poor.Value, (double)width), (edge.Single().Poor, edge[0].At.DistanceTo(edge[0].ArmY)));
    }

    [Fact]
    public void GroundWithoutRoomForAWholeArmHoldsNoCorner() =>
        Assert.Empty(Grid(Small with { Right = 7_900, Bottom = 7_900 }).Spread().Concat(Grid(Box.Empty).Spread()));

    [Fact]
    public void NeighboursAreThoseSoManyStepsAwayThatAreFree()
    {
        var grid = Grid(Small, isFree: p => p != new Point(22_000, 12_000));
        Assert.Equal(
            [(18, 10), (20, 10), (22, 10), (18, 12), (18, 14), (20, 14), (22, 14)],
            grid.Around(new(20_000, 12_000), 2).Select(p => (p.At.X / 1000, p.At.Y / 1000))
        );
        Assert.Equal([(1, 0), (0, 1), (1, 1)], grid.Around(new(0, 0), 1).Select(p => (p.At.X / 1000, p.At.Y / 1000)));
        Assert.Equal(
            [(39, 23), (40, 23), (39, 24)],
            grid.Around(new(40_000, 24_000), 1).Select(p => (p.At.X / 1000, p.At.Y / 1000))
        );
    }

    /// <summary>Large ground is looked at more coarsely, and a start has some thirty places, one in each part of it.</summary>
    [Fact]
    public void PlacesForAStartAreSpreadOverTheGround()
    {
        var ground = new Box(-50, -50, 240_000, 120_000);
        var start = Grid(ground, isSewn: p => p.X < 120_000).Spread().ToList();
        Assert.InRange(start.Count, 24, 40);
        Assert.Equal(start.Count, start.Select(p => p.At).Distinct().Count());
        foreach (var (left, top) in ((int, int)[])[(0, 0), (120_000, 0), (0, 60_000), (120_000, 60_000)])
        {
            var quarter = start.Where(p => new Box(left, top, left + 120_000, top + 60_000).Contains(p.At)).ToList();
            Assert.InRange(quarter.Count, 5, 12);
            Assert.All(quarter, p => Assert.Equal(left == 0, p.Poor > 0));
        }
        // Of places that are equally good, the outermost: the ends of the ground are among them.
        Assert.Contains(start, p => p.At.X > 235_000 && p.At.Y == 0);
        Assert.Contains(start, p => p.At.X > 235_000 && p.At.Y > 115_000);
    }

    private static CornerGrid Grid(Box ground, Func<Point, bool>? isSewn = null, Func<Point, bool>? isFree = null) =>
        new(ground, 0, Rules, isSewn ?? (_ => false), isFree ?? (_ => true));

    /// <summary>Every place of a grid whose step is that of small ground, each found as a neighbour of the one before it.</summary>
    private static List<CornerCandidate> All(CornerGrid grid, Box ground)
    {
        var (left, top) = (Units.OnTape(ground.Left + 50), Units.OnTape(ground.Top + 50));
        var found = new List<CornerCandidate>();
        for (var y = top; y <= ground.Bottom; y += CommonGround.CornerStep)
        for (var x = left; x <= ground.Right; x += CommonGround.CornerStep)
            found.AddRange(
                grid.Around(new(x + CommonGround.CornerStep, y), 1).Where(place => place.At == new Point(x, y))
            );
        return found;
    }
}
