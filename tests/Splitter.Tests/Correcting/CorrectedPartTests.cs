using System.Collections.Immutable;
using Splitter.Correcting;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Outputs.Sheets;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Stitching;

namespace Splitter.Tests.Correcting;

/// <summary>What a move makes of a part and of its joins.</summary>
public sealed class CorrectedPartTests
{
    /// <summary>Three jumps of 12.1 mm: one more step, and the machine cuts what nothing holds.</summary>
    [Theory]
    [InlineData(36.3, false)]
    [InlineData(36.4, true)]
    public void ALooseMoveThatGotTooLongIsCutAndTied(double way, bool isCut)
    {
        var (one, other) = (Thread(0), Thread(3 + way));
        var moves = LooseMoves.Tied([new(one, false), new(other, false)]);
        Assert.Equal(isCut, moves[1].Trim);
        Assert.Equal(isCut ? StitchUse.Tie : StitchUse.Run, moves[0].Block.Stitches[^1].Use);
        Assert.Equal(isCut ? StitchUse.Tie : StitchUse.Run, moves[1].Block.Stitches[0].Use);
        Assert.Equal(((false, isCut), (isCut, false)), (moves[0].Block.IsTied, moves[1].Block.IsTied));
        // Ends that the tape goes on from, or begins with, stay as they are.
        Assert.Equal(one.Stitches[0], moves[0].Block.Stitches[0]);
        Assert.Equal(other.Stitches[^1], moves[1].Block.Stitches[^1]);
    }

    /// <summary>The needle is led to the opposite side, but never into the last millimetre of the field.</summary>
    [Theory]
    [InlineData(93, 2)]
    [InlineData(94, 2)]
    [InlineData(95, 0)]
    public void TheNeedleIsLedNoFurtherThanOneMaySew(int right, int visits)
    {
        var field = new Field(Samples.Hoop(200, 200), default, Turn.None, 5000);
        var planned = new FieldBox(-95_000, -50_000, 90_000, 50_000);
        var moved = new FieldBox(-90_000, -50_000, 1000 * right, 50_000);
        Assert.Equal(visits, FieldBox.Visits(field, planned, moved).Length);
    }

    /// <summary>A cross half a millimetre from the field's edge is no reason to refuse a move that two others check.</summary>
    [Theory]
    [InlineData(3, 2)]
    [InlineData(2, 2)]
    public void ACrossWithoutRoomIsLeftOutWhereTwoOthersStay(int measured, int shown)
    {
        var field = new Field(Samples.Hoop(200, 200), default, Turn.None, 5000);
        Sighting[] seen = [At(-93, 0), At(40, 0), At(0, 50)];
        var judged = new Judgement(Verdict.Moved, new(default, new(-6500, 0), 0), GrainStretch.None, 0);
        var crosses = CheckCrosses.Shown(field, judged, [.. seen.Take(measured)]);
        Assert.Equal(shown, crosses.Length);
        Assert.Equal(measured == 2, crosses.Contains(seen[0]));

        static Sighting At(double x, double y) => new(Point.FromMillimetres(x, y), 0, new(6500, 0));
    }

    /// <summary>Measured at one place more it may be as planned again, and is then among no changes.</summary>
    [Fact]
    public void AnOpenJoinMayComeBackToWhatWasPlanned()
    {
        var recipe = Samples.Recipe(Samples.Hoop(60, 60));
        var drawing = Samples.Drawing(Samples.Rectangle("sea", 0, 0, 210, 50));
        var plan = Planner.Plan(new(recipe, drawing), recipe.Hoops[0]).Value;
        var (hooping, planned) = (
            from h in Enumerable.Range(1, plan.Hoopings.Length - 1)
            from j in plan.Joins
            where j.Later > h && j.Earlier != h
            where Expected(h).With(Taken(h)).All(c => c.Before != j)
            select (h, j)
        ).First();
        var places = MeasurablePlace.Of(drawing, plan, hooping);
        var hole = places.First(p => p.Across is null);
        var problem = Assert.Single(
            UncoveredJoins.Of(
                new(plan.Hoopings[hooping].Letter, [], Place.Whole("call")),
                plan,
                Expected(hooping),
                places,
                [new Sighting(hole.At, hole.Donor, default)],
                [new(planned, planned with { AlongSeam = planned.AlongSeam + 2000, Covers = 0 })]
            )
        );
        Assert.Contains("measure at", problem.Message, StringComparison.Ordinal);

        ExpectedFit Expected(int h) => new(recipe, drawing, plan, h, null);

        ImmutableArray<TakenCorner> Taken(int h) =>
            [.. plan.Hoopings[h].Takes.Select(i => plan.Corners[i]).Select(c => new TakenCorner(c.At, c.Donor))];
    }

    [Theory]
    [InlineData("sails.yaml", "sails.yaml")]
    [InlineData("my sails.yaml", "\"my sails.yaml\"")]
    [InlineData("my $work.yaml", "'my $work.yaml'")]
    [InlineData("a \"sail\".yaml", "'a \"sail\".yaml'")]
    [InlineData("Ann's $work.yaml", @"'Ann'\''s $work.yaml'")]
    public void AFileNameIsOneWordOfACommand(string name, string word) => Assert.Equal(word, RealignLine.Word(name));

    private static Block Thread(double x) =>
        new(
            "thread",
            [.. Enumerable.Range(0, 4).Select(i => new Stitch(Point.FromMillimetres(x + i, 0), StitchUse.Run))]
        )
        {
            IsTied = (false, false),
            IsCutBefore = false,
        };
}
