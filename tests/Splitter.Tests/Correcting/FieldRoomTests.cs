using Splitter.Correcting;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Stitching;

namespace Splitter.Tests.Correcting;

/// <summary>
/// A hoop of 200 x 100 mm that keeps 5 mm free. Places as it lies before the person: millimetres from its middle, to
/// the right and up.
/// </summary>
public sealed class FieldRoomTests
{
    public static TheoryData<string> Turns => [.. Enum.GetNames<Turn>()];

    /// <summary>As near to the edge as planned it is sewn in silence, nearer with a word, in the last millimetre never.</summary>
    [Theory]
    [MemberData(nameof(Turns))]
    public void APartMayBeMovedIntoWhatIsKeptFreeButForTheLastMillimetre(string turn)
    {
        var field = FieldOf(turn);
        foreach (
            var (side, at) in new (string, Func<double, (double, double)>)[]
            {
                ("right", free => (100 - free, 0)),
                ("left", free => (free - 100, 0)),
                ("top", free => (0, 50 - free)),
                ("bottom", free => (0, free - 50)),
            }
        )
        {
            Assert.Empty(Within(field, at(5)).Diagnostics);
            var near = Within(field, at(3));
            Assert.True(near.Succeeded);
            Assert.Contains(side, Assert.Single(near.Diagnostics).Message, StringComparison.Ordinal);
            Assert.True(Within(field, at(1)).Succeeded);
            var beyond = Within(field, at(0.9));
            Assert.False(beyond.Succeeded);
            Assert.Contains(side, Assert.Single(beyond.Diagnostics).Message, StringComparison.Ordinal);
        }
    }

    /// <summary>It would end half a millimetre from the edge; as planned it ended ten from it, so nine would do.</summary>
    [Fact]
    public void AMoveThatIsTooFarSaysHowFarOneMayGo()
    {
        var field = FieldOf(nameof(Turn.None));
        var (planned, moved) = (Step(field, StepKind.Body, (90, 0)), Step(field, StepKind.Body, (99.5, 0)));
        var error = Assert.Single(FieldRoom.Within(Asked, [planned], PartOf(field, [moved])).Diagnostics);
        Assert.Contains("would reach 0.5 mm past", error.Message, StringComparison.Ordinal);
        Assert.Contains("Up to 9.0 mm that way would do", error.Message, StringComparison.Ordinal);
    }

    /// <summary>Crosses that check the move are few stitches; it is the part of which a person is told.</summary>
    [Fact]
    public void ACrossNearTheEdgeIsNoReasonForAWord()
    {
        var field = FieldOf(nameof(Turn.None));
        var steps = new[] { Step(field, StepKind.Body, (0, 0)), Step(field, StepKind.Alignment, (97, 0)) };
        Assert.Empty(FieldRoom.Within(Asked, steps, PartOf(field, steps)).Diagnostics);
        var outside = new[] { Step(field, StepKind.Body, (0, 0)), Step(field, StepKind.Alignment, (99.5, 0)) };
        Assert.False(FieldRoom.Within(Asked, outside, PartOf(field, outside)).Succeeded);
    }

    [Theory]
    [InlineData(0, 0, 49)]
    [InlineData(0, 45, 4)]
    [InlineData(0, -45, 4)]
    [InlineData(95, 0, 4)]
    [InlineData(-95, 10, 4)]
    [InlineData(99.5, 0, -0.5)]
    public void RoomIsWhatIsLeftToTheNearestSide(double right, double up, double room)
    {
        var field = FieldOf(nameof(Turn.Quarter));
        Assert.Equal(room * 1000, FieldRoom.Around(field, At(field, (right, up))));
    }

    /// <summary>
    /// A tape that reaches further to one side reaches as much further to the other, so that its middle stays, and no less
    /// far than planned.
    /// </summary>
    [Theory]
    [InlineData(5, 0, -45, -30, 55, 60)]
    [InlineData(-5, 0, -45, -30, 55, 60)]
    [InlineData(0, 5, -40, -35, 50, 65)]
    [InlineData(0, -5, -40, -35, 50, 65)]
    public void TheMiddleOfATapeStays(int right, int up, int left, int bottom, int mostRight, int top)
    {
        var planned = new FieldBox(-40_000, -30_000, 50_000, 60_000);
        var moved = new FieldBox(
            planned.Left + (right * 1000),
            planned.Bottom + (up * 1000),
            planned.Right + (right * 1000),
            planned.Top + (up * 1000)
        );
        var field = new Field(Samples.Hoop(200, 200), default, Turn.None, 5000);
        Assert.Equal<FieldPoint>(
            [new(left * 1000, bottom * 1000), new(mostRight * 1000, top * 1000)],
            FieldBox.Visits(field, planned, moved)
        );
        Assert.Empty(FieldBox.Visits(field, planned, planned));
    }

    /// <summary>Never into the last millimetre, upwards as little as aside.</summary>
    [Theory]
    [InlineData(94, 2)]
    [InlineData(95, 0)]
    public void TheNeedleIsLedNoFurtherUpThanOneMaySew(int top, int visits)
    {
        var field = new Field(Samples.Hoop(200, 200), default, Turn.None, 5000);
        var planned = new FieldBox(-50_000, -95_000, 50_000, 90_000);
        var moved = new FieldBox(-50_000, -90_000, 50_000, 1000 * top);
        Assert.Equal(visits, FieldBox.Visits(field, planned, moved).Length);
    }

    private static PartOffsets Asked => new("B", [], Place.Whole("call"));

    private static Result<Part> Within(Field field, (double Right, double Up) farthest)
    {
        var steps = new[] { Step(field, StepKind.Body, farthest) };
        return FieldRoom.Within(Asked, steps, PartOf(field, steps));
    }

    private static Field FieldOf(string turn) =>
        new(Samples.Hoop(200, 100), Point.FromMillimetres(30, -20), Enum.Parse<Turn>(turn), 5000);

    /// <summary>From the middle to a place.</summary>
    private static Step Step(Field field, StepKind kind, (double Right, double Up) to) =>
        new(
            1,
            kind,
            null,
            [new(new Block("sea", [new(field.Centre, StitchUse.Run), new(At(field, to), StitchUse.Run)]), false)],
            []
        );

    private static Point At(Field field, (double Right, double Up) at) =>
        field.ToDesign(new(Units.FromMillimetres(at.Right), Units.FromMillimetres(at.Up)));

    private static Part PartOf(Field field, Step[] steps) =>
        new(
            new Hooping
            {
                Letter = "B",
                Field = field,
                Ground = field.Usable,
                Territory = Region.Empty,
                Takes = [],
                Gives = [],
                Alignments = [],
            },
            [.. steps]
        );
}
