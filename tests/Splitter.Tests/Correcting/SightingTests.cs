using System.Collections.Immutable;
using Splitter.Correcting;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Recipes;

namespace Splitter.Tests.Correcting;

/// <summary>What is made of figures that were read in the hoop.</summary>
public sealed class SightingTests
{
    private static readonly Recipe Recipe = Samples.Recipe(Samples.Hoop(200, 200));

    public static TheoryData<string> Turns => [.. Enum.GetNames<Turn>()];

    [Fact]
    public void AHoleThatHasTwoNamesCountsOnce()
    {
        var read = Read(Turn.None, [Hole("A6", 0, 0), Hole("2", 0, 0), Hole("A7", 80, 0)], Right("A6"), Right("2"));
        Assert.Contains("'2' and 'A6' are the same hole", read.Diagnostics[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void OneHoleShowsNoMove()
    {
        var read = Read(Turn.None, [Hole("A1", 0, 0), Hole("A2", 80, 0)], Right("A2"));
        Assert.False(read.Succeeded);
        Assert.Contains("there is 1;", Assert.Single(read.Diagnostics).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void PlacesOnBothSidesOfTheFirstAreFarEnoughFromEachOther()
    {
        MeasurablePlace[] places = [Hole("A1", 15, 0), Hole("A2", 6, 0), Hole("A3", 24, 0)];
        Assert.Empty(Read(Turn.None, places, Right("A1"), Right("A2"), Right("A3")).Diagnostics);
        Assert.Equal("SPL4007", Read(Turn.None, places, Right("A1"), Right("A2")).Diagnostics[0].Code);
    }

    /// <summary>On an edge at 45 degrees a way to the right and nothing upwards is not what a ruler across it shows.</summary>
    [Theory]
    [InlineData("E 1 mm right 0 mm up", 707)]
    [InlineData("E 1 mm right", 1000)]
    public void NoughtThatWasReadIsNotTakenForNothingRead(string said, double across)
    {
        var half = Math.Sqrt(0.5);
        var edge = new MeasurablePlace("E", Point.FromMillimetres(40, 40), 0, "sail", new(half, half));
        var offsets = OffsetWords.Read([said], Place.Whole("call")).Value;
        var read = Read(Turn.None, [Hole("A1", 0, 0), Hole("A2", 80, 0), edge], [Right("A1"), Right("A2"), .. offsets]);
        Assert.Equal(across, read.Value[2].Offset.Length, 1.0);
    }

    /// <summary>However the hoop lies on the drawing, the part goes back by what was read, as the hoop lies before one.</summary>
    [Theory]
    [MemberData(nameof(Turns))]
    public void ATurnedHoopMovesByWhatWasRead(string turn)
    {
        var field = Hooping(Enum.Parse<Turn>(turn)).Field;
        var judged = Judged(field.Turn, 600, -200);
        var (before, after) = (Point.FromMillimetres(30, 20), judged.OnTape(Point.FromMillimetres(30, 20)));
        var (from, to) = (field.ToField(before), field.ToField(after));
        Assert.Equal((-600, 200), (to.U - from.U, to.V - from.V));
    }

    /// <summary>
    /// What the check crosses are for: the hoop lays each stitch as far off as before, and the crosses of a move that
    /// was told the wrong way round miss their holes by twice as much.
    /// </summary>
    [Theory]
    [MemberData(nameof(Turns))]
    public void ACrossMissesByTwiceAsMuchWhereRightWasTakenForLeft(string turn)
    {
        var kind = Enum.Parse<Turn>(turn);
        var field = Hooping(kind).Field;
        Assert.All(
            [Point.FromMillimetres(-50, 0), Point.FromMillimetres(50, 30)],
            hole =>
            {
                Assert.Equal((0, 0), Miss(Judged(kind, 600, 0), hole));
                Assert.Equal((1200, 0), Miss(Judged(kind, -600, 0), hole));
            }
        );

        // All that is sewn lies 0.6 mm to the right.
        (int, int) Miss(Judgement judged, Point hole)
        {
            var (cross, at) = (field.ToField(judged.OnTape(hole)), field.ToField(hole));
            return (cross.U + 600 - at.U, cross.V - at.V);
        }
    }

    private static Judgement Judged(Turn turn, int right, int up)
    {
        MeasuredOffset[] offsets =
        [
            new("A1", right, up, Place.Whole("call")),
            new("A2", right, up, Place.Whole("call")),
        ];
        var seen = Read(turn, [Hole("A1", -50, 0), Hole("A2", 50, 30)], offsets).Value;
        ImmutableArray<Corner> corners = [.. seen.Select(s => new Corner(s.Name, s.At, s.At, s.At, 0, [1]))];
        return Judgement.Of(Recipe, new PredictedFit(Recipe, 2, corners), 1, seen);
    }

    private static Result<ImmutableArray<Sighting>> Read(
        Turn turn,
        MeasurablePlace[] places,
        params MeasuredOffset[] offsets
    ) => Sighting.Of([.. places], Hooping(turn), [.. offsets], Place.Whole("call"));

    private static MeasurablePlace Hole(string name, double x, double y) =>
        new(name, Point.FromMillimetres(x, y), 0, name, null);

    private static MeasuredOffset Right(string at) => new(at, 600, 0, Place.Whole("call"));

    private static Hooping Hooping(Turn turn) =>
        new()
        {
            Letter = "B",
            Field = new(Recipe.Hoops[0], Point.FromMillimetres(5, -7), turn, 0),
            Ground = default,
            Territory = Samples.Ground(0, 0, 1, 0, 1, 1),
            Takes = [],
            Gives = [],
            Alignments = [],
        };
}
