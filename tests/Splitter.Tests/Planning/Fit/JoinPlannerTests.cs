using System.Collections.Immutable;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fit;

/// <summary>Overlaps of two parts that meet along x 50 mm, by how far their fields sew on past it.</summary>
public sealed class JoinPlannerTests
{
    private const int Ample = 20_000;

    /// <summary>Where one field ends at the seam the other one reaches as far for both of them, rows of every length.</summary>
    [Theory]
    [InlineData(null, 0)]
    [InlineData(null, 300)]
    [InlineData(3000, 0)]
    [InlineData(3000, 1000)]
    public void TheRoomierSideReachesForBoth(int? width, int narrow)
    {
        var join = Join(new() { Width = width }, new SideRoom(narrow, Ample));
        Assert.True(join.IsCovered, $"{join.Within95} µm, covered {join.Covers}");
        Assert.Equal(narrow < SeamRoom.Least ? narrow : Math.Min(narrow, join.Overlap), join.Narrowest);
        Assert.InRange(join.Covers, 0, (join.Overlap * Overlaps.ShortShare) + join.Narrowest);
        // And no further than it needs to: that would only be thread on thread.
        Assert.InRange(join.Overlap, SeamRoom.Least, Math.Max(SeamRoom.Least, (join.Within95 / 0.6) + 100));
    }

    /// <summary>An explicit width holds for both sides; less than is needed stays less.</summary>
    [Fact]
    public void AWidthThatTheRecipeGivesIsNotExceeded()
    {
        var join = Join(new() { Width = 500 }, new SideRoom(0, Ample));
        Assert.Equal((500, 0, 300, false), (join.Overlap, join.Narrowest, join.Covers, join.IsCovered));
    }

    /// <summary>What is told is what holds at the worst place: here neither side has room.</summary>
    [Fact]
    public void WhereBothSidesEndLittleIsCovered()
    {
        var join = Join(new(), new SideRoom(Ample, Ample), new SideRoom(100, 200));
        Assert.Equal((100, 300, false), (join.Narrowest, join.Covers, join.IsCovered));
    }

    /// <summary>Two stretches of seam through two shapes, of which one has room for 1 mm and the other for 2.</summary>
    [Theory]
    [InlineData(1000, 2000)]
    [InlineData(2000, 1000)]
    public void AWidthIsNoMoreThanEveryShapeHasRoomFor(int one, int other)
    {
        var join = Planned(new() { Width = 3000 }, [new(one, one)], [new(other, other)]);
        Assert.Equal((1000, 1000), (join.Overlap, join.Narrowest));
    }

    /// <summary>Corners lie at 5 and 75 mm, the seam goes from 0 to 80: at its ends the parts miss each other most.</summary>
    [Fact]
    public void TheWorstPlaceIsTheOneFarthestFromTheCorners()
    {
        var join = Join(new(), new SideRoom(Ample, Ample));
        Assert.Equal(Point.FromMillimetres(50, 0), join.WorstAt);
        // Accuracy²·(1 + (40² + 5²)/(2·35²)) for the setting, twice a step²/12 and axis for the tapes.
        var accuracy = Samples.Recipe(Samples.Hoop(100, 100)).Registration.Accuracy;
        var square = accuracy * accuracy * (1 + ((1600 + 25) / 2450.0));
        Assert.Equal(Math.Sqrt(square), join.Budget.Setting, 1.0);
        Assert.Equal(join.Budget.Total, join.PredictedError);
    }

    /// <summary>
    /// Three parts meet at 50, 40: there they come out in a larger circle than two of them miss each other by, and overlaps are
    /// as wide as that asks.
    /// </summary>
    [Fact]
    public void OverlapsCoverWhereOthersMeetTheTwo()
    {
        var middle = Point.FromMillimetres(50, 40);
        (int Earlier, int Later, Polyline Line)[] seams =
        [
            (0, 1, new([Point.FromMillimetres(50, 30), middle])),
            (0, 2, new([middle, Point.FromMillimetres(50, 50)])),
            (1, 2, new([middle, Point.FromMillimetres(60, 40)])),
        ];
        var division = new Division(
            [],
            [null],
            [.. seams.Select(s => new Seam(s.Earlier, s.Later, s.Line))],
            [.. seams.Select(s => new Crossing(s.Earlier, s.Later, 0, s.Line))],
            [],
            new(0, 0, 1)
        );
        var recipe = Samples.Recipe(Samples.Hoop(100, 100)) with { Registration = new() { Accuracy = 900 } };
        Point[] places = [Point.FromMillimetres(45, 5), Point.FromMillimetres(45, 75)];
        ImmutableArray<Corner> corners = [.. places.Select((p, i) => new Corner($"A{i + 1}", p, p, p, 0, [1, 2]))];
        var joins = JoinPlanner.Plan(recipe, division, new PredictedFit(recipe, 3, corners));
        Assert.Equal([(0, 1), (0, 2), (1, 2)], joins.Select(j => (j.Earlier, j.Later)));
        Assert.All(joins, join => Assert.True(join.IsCovered, $"{join}"));
        Assert.All(joins[..2], join => Assert.Equal((true, middle), (join.IsWorstAtJunction, join.Weakest)));
        // What covers the seam alone would not do.
        Assert.All(joins[..2], join => Assert.InRange(join.Within95, join.AlongSeam * 1.1, join.Covers));
    }

    /// <summary>What the plan promises of one side is cut so: past the seam up to the edge of each field.</summary>
    [Fact]
    public void TheRoomierSideIsCutThatFar()
    {
        var join = Join(new(), new SideRoom(0, Ample));
        var grounds = new PartGrounds(TwoParts(join));
        Assert.Equal(
            [(0, 1, 0), (1, 0, join.Overlap)],
            grounds.Reaches.Select(r => (r.Part, r.Over, grounds.Past(r).Bounds is { IsEmpty: false } b ? b.Width : 0))
        );
    }

    private static PartJoin Join(OverlapRules rules, params ReadOnlySpan<SideRoom> rooms) =>
        Planned(rules, rooms.ToArray());

    /// <param name="crossings">What room each of them has, all along the seam.</param>
    private static PartJoin Planned(OverlapRules rules, params SideRoom[][] crossings)
    {
        var seam = new Polyline([Point.FromMillimetres(50, 0), Point.FromMillimetres(50, 80)]);
        var division = new Division(
            [],
            [null],
            [new(0, 1, seam)],
            [.. crossings.Select((rooms, i) => new Crossing(0, 1, i, seam) { Rooms = [.. rooms] })],
            [],
            new(0, 0, 1)
        );
        var recipe = Samples.Recipe(Samples.Hoop(100, 100)) with { Overlap = rules };
        Point[] corners = [Point.FromMillimetres(45, 5), Point.FromMillimetres(45, 75)];
        var fit = new PredictedFit(recipe, 2, [.. corners.Select((p, i) => new Corner($"A{i + 1}", p, p, p, 0, [1]))]);
        return Assert.Single(JoinPlanner.Plan(recipe, division, fit));
    }

    /// <summary>The first one's ground ends at the seam.</summary>
    private static Plan TwoParts(PartJoin join)
    {
        var hoop = Samples.Hoop(100, 100);
        return new()
        {
            Hoop = hoop,
            Hoopings =
            [
                Hooping(0, new(0, 0, 50_000, 80_000), new(0, 0, 50_000, 80_000)),
                Hooping(1, new(20_000, 0, 100_000, 80_000), new(50_000, 0, 100_000, 80_000)),
            ],
            LowerBound = 2,
            Owners = [null],
            SeamLines = [],
            Joins = [join],
            Corners = [],
            PlacementLines = [],
            Seams = new(0, 0, 1),
        };

        Hooping Hooping(int index, Box ground, Box territory) =>
            new()
            {
                Letter = Letters.Of(index),
                Field = new(hoop, ground.Centre, Turn.None, 0),
                Ground = ground,
                Territory = Region.Of(territory),
                Takes = [],
                Gives = [],
                Alignments = [],
            };
    }
}
