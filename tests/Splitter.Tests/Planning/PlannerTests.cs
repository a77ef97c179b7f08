using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Tests.Planning;

public sealed class PlannerTests
{
    [Fact]
    public void ArtworkThatFitsOneHoopIsOnePartWithoutSeams()
    {
        var plan = Plan(
            Samples.Recipe(Samples.Hoop(130, 180)),
            Samples.Drawing(Samples.Rectangle("a", 0, 0, 100, 150))
        );
        var only = Assert.Single(plan.Hoopings);
        Assert.Equal("A", only.Letter);
        Assert.Empty(plan.SeamLines);
        Assert.Empty(plan.Corners);
        Assert.Equal(0, plan.Owners[0]);
    }

    /// <summary>At once, not after a search.</summary>
    [Theory]
    [InlineData(30)]
    [InlineData(20)]
    public void AHoopTooSmallForCornersIsOneError(double side)
    {
        var planned = Planner.Plan(
            new(Samples.Recipe(Samples.Hoop(side, side)), Samples.Drawing(Samples.Rectangle("a", 0, 0, 200, 150))),
            Samples.Hoop(side, side)
        );
        Assert.Equal("SPL3013", Assert.Single(planned.Diagnostics).Code);
    }

    /// <summary>
    /// ceil((W - o) / (w - o)) * ceil((H - o) / (h - o)) fields of one orientation cover a rectangle when neighbours share
    /// o: closed form. The ground of a field is smaller than the field by the stitches' reach of 0.1 mm a side.
    /// </summary>
    [Theory]
    [InlineData(300, 100, 130, 180, 3)]
    [InlineData(300, 300, 130, 180, 6)]
    [InlineData(250, 170, 130, 180, 3)]
    [InlineData(420, 560, 200, 300, 6)]
    public void AutomaticFieldsOfARectangleNeedNoMoreThanTheClosedForm(
        double w,
        double h,
        double hoopW,
        double hoopH,
        int most
    )
    {
        var plan = Plan(
            Samples.Recipe(Samples.Hoop(hoopW, hoopH)),
            Samples.Drawing(Samples.Rectangle("a", 0, 0, w, h))
        );
        Assert.InRange(plan.Hoopings.Length, plan.LowerBound, most);
    }

    [Fact]
    public void EveryHoopingAfterTheFirstTakesTwoCornersFromAnEarlierOneInsideBothFields()
    {
        var recipe = Samples.Recipe(Samples.Hoop(130, 180));
        var plan = Plan(recipe, Samples.Drawing(Samples.Rectangle("a", 0, 0, 420, 560)));
        for (var i = 1; i < plan.Hoopings.Length; i++)
        {
            var taken = plan.Hoopings[i].Takes.Select(c => plan.Corners[c]).ToList();
            Assert.InRange(taken.Count, 2, recipe.Registration.CornerCount);
            foreach (var corner in taken)
            {
                Assert.True(corner.Donor < i);
                Assert.Contains(i, corner.Receivers);
                foreach (var field in new[] { plan.Hoopings[i].Field, plan.Hoopings[corner.Donor].Field })
                foreach (var p in new[] { corner.At, corner.ArmX, corner.ArmY })
                    Assert.True(field.Usable.Contains(p));
            }
        }
        Assert.Equal(plan.Corners.Length, plan.Corners.Select(c => c.Id).Distinct().Count());
    }

    [Fact]
    public void CornersAvoidSewnStitchingWhereThereIsRoom()
    {
        // Two fields share a strip 40 mm wide; artwork covers its left half only.
        var fields = new ListedFields([
            new(Point.FromMillimetres(65, 90), Turn.None),
            new(Point.FromMillimetres(155, 90), Turn.None),
        ]);
        var recipe = Samples.Recipe(Samples.Hoop(130, 180), fields);
        var plan = Plan(
            recipe,
            Samples.Drawing(Samples.Rectangle("left", 1, 5, 108, 170), Samples.Rectangle("right", 135, 5, 80, 170))
        );
        var drawingLeft = Box.Around([Point.FromMillimetres(1, 5), Point.FromMillimetres(109, 175)]);
        foreach (var corner in plan.Corners)
        foreach (var p in new[] { corner.At, corner.ArmX, corner.ArmY })
            Assert.False(drawingLeft.Contains(p), $"{corner}");
    }

    [Fact]
    public void AShapeThatSticksOutIsAnErrorThatSaysWhereAndByHowMuch()
    {
        var fields = new ListedFields([new(Point.FromMillimetres(50, 50), Turn.None)]);
        var result = Planner.Plan(
            new(
                Samples.Recipe(Samples.Hoop(100, 100), fields),
                Samples.Drawing(Samples.Rectangle("sea", 10, 10, 97.1, 50))
            ),
            Samples.Hoop(100, 100)
        );
        var error = Assert.Single(result.Diagnostics);
        Assert.Equal("SPL3001", error.Code);
        Assert.Contains("'sea'", error.Message, StringComparison.Ordinal);
        Assert.Contains("by 7.2 mm at x 107.1", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AKeepWholeShapeLiesInOneFieldThoughTheGridWouldCutIt()
    {
        var word = Samples.Rectangle("word", 110, 40, 60, 20) with { KeepWhole = true };
        var plan = Plan(
            Samples.Recipe(Samples.Hoop(130, 180)),
            Samples.Drawing(Samples.Rectangle("ground", 0, 0, 300, 100), word)
        );
        Assert.NotNull(plan.Owners[1]);
        Assert.True(plan.Hoopings[plan.Owners[1]!.Value].Ground.Contains(word.Footprint.Bounds));
    }

    [Fact]
    public void AKeepWholeShapeLargerThanTheHoopIsAnError()
    {
        var hoop = Samples.Hoop(100, 100);
        var word = Samples.Rectangle("word", 0, 0, 120, 20) with { KeepWhole = true };
        var result = Planner.Plan(new(Samples.Recipe(hoop), Samples.Drawing(word)), hoop);
        Assert.Equal("SPL3003", Assert.Single(result.Diagnostics, d => d.Severity == Severity.Error).Code);
    }

    [Fact]
    public void AFieldThatSharesTooLittleGroundIsAnError()
    {
        var hoop = Samples.Hoop(100, 100);
        var fields = new ListedFields([
            new(Point.FromMillimetres(50, 50), Turn.None),
            new(Point.FromMillimetres(149, 50), Turn.None),
        ]);
        var result = Planner.Plan(
            new(
                Samples.Recipe(hoop, fields),
                Samples.Drawing(Samples.Rectangle("a", 1, 1, 90, 90), Samples.Rectangle("b", 105, 1, 90, 90))
            ),
            hoop
        );
        Assert.Equal("SPL3005", Assert.Single(result.Diagnostics).Code);
    }

    /// <summary>
    /// A fold one inch up from the cloth's bottom edge lies 25.4 mm above it (one inch is 25.4 mm exactly: international
    /// yard and pound agreement of 1959), in either hoop, and turns with the field.
    /// </summary>
    [Theory]
    [InlineData(130, 180)]
    [InlineData(200, 300)]
    public void PlacementLinesLieOnTheFoldsInTheFirstField(double width, double height)
    {
        var hoop = Samples.Hoop(width, height);
        var recipe = Samples.Recipe(hoop) with
        {
            Cloth = new()
            {
                Size = (460_000, 620_000),
                ArtworkAt = new(20_000, 30_000),
                Folds = new(new(230_000, false), new(620_000 - 25_400, false)),
            },
        };
        var plan = Plan(recipe, Samples.Drawing(Samples.Rectangle("a", 0, 0, 420, 560)));
        var level = Assert.Single(plan.PlacementLines, l => l.Fold == Fold.Level);
        Assert.Equal(620_000 - 25_400, level.From.Y + 30_000);
        Assert.Equal(level.From.Y, level.To.Y);
        Assert.True(level.From.DistanceTo(level.To) >= 30_000);
        var upright = Assert.Single(plan.PlacementLines, l => l.Fold == Fold.Upright);
        Assert.Equal(230_000, upright.From.X + 20_000);
        Assert.True(upright.From.DistanceTo(upright.To) >= 30_000);
        Assert.True(plan.Hoopings[0].Field.Usable.Contains(level.From));
        Assert.True(plan.Hoopings[0].Field.Usable.Contains(new Point(upright.From.X, level.From.Y)));
    }

    [Fact]
    public void MovingTheWholeArtworkByWholeMillimetresMovesThePlanWithIt()
    {
        var recipe = Samples.Recipe(Samples.Hoop(130, 180));
        var here = Plan(recipe, Samples.Drawing(Samples.Rectangle("a", 0, 0, 420, 560)));
        var there = Plan(recipe, Samples.Drawing(Samples.Rectangle("a", 37, 12, 420, 560)));
        Assert.Equal(
            here.Hoopings.Select(h => h.Field.Centre + new Point(37_000, 12_000)),
            there.Hoopings.Select(h => h.Field.Centre)
        );
    }

    /// <summary>A grid never turns the hoop by itself, even where fields lying the other way would cover what these do not.</summary>
    [Fact]
    public void AGridLiesAsItsTurnSays()
    {
        var hoop = Samples.Hoop(100, 160);
        var drawing = Samples.Drawing(Samples.Rectangle("a", 0, 0, 300, 90));
        Plan Turned(Turn turn) => Plan(Samples.Recipe(hoop, new GridFields(2, 1, turn)), drawing);
        Assert.All(Turned(Turn.Quarter).Hoopings, h => Assert.Equal(Turn.Quarter, h.Field.Turn));
        Assert.Equal(
            "SPL3001",
            Planner.Plan(new(Samples.Recipe(hoop, new GridFields(2, 1, Turn.None)), drawing), hoop).Diagnostics[0].Code
        );
    }

    [Fact]
    public void AFixedFieldIsThereAndTheOthersAreNoMoreThanMustBe()
    {
        var recipe = Samples.Recipe(Samples.Hoop(130, 180));
        var fixedField = new ListedField(Point.FromMillimetres(150, 90), Turn.None);
        var plan = Plan(
            recipe with
            {
                Fields = recipe.Fields with { Fixed = [fixedField] },
            },
            Samples.Drawing(Samples.Rectangle("a", 0, 0, 300, 100))
        );
        Assert.Contains(plan.Hoopings, h => h.Field.Centre == fixedField.Centre && h.Field.Turn == Turn.None);
        Assert.Equal(3, plan.Hoopings.Length);
    }

    [Fact]
    public void NoFieldLiesOverAForbiddenZone()
    {
        var recipe = Samples.Recipe(Samples.Hoop(130, 180));
        // The middle of a field that holds both rectangles would lie over the zone, and so would all fields in between.
        var zone = new Box(140_000, -500_000, 150_000, 40_000);
        var plan = Plan(
            recipe with
            {
                Fields = recipe.Fields with { Forbidden = [zone] },
            },
            Samples.Drawing(
                Samples.Rectangle("left", 20, 50, 100, 100),
                Samples.Rectangle("right", 160, 50, 100, 100),
                Samples.Rectangle("below", 20, 150, 240, 20)
            )
        );
        Assert.All(
            plan.Hoopings,
            h => Assert.True(h.Field.Bounds.Common(zone) is var c && (c.Width <= 0 || c.Height <= 0))
        );
    }

    [Fact]
    public void AListedFieldOverAForbiddenZoneIsAnError()
    {
        var hoop = Samples.Hoop(100, 100);
        var recipe = Samples.Recipe(hoop, new ListedFields([new(Point.FromMillimetres(50, 50), Turn.None)]));
        var result = Planner.Plan(
            new(
                recipe with
                {
                    Fields = recipe.Fields with { Forbidden = [new(0, 95_000, 100_000, 120_000)] },
                },
                Samples.Drawing(Samples.Rectangle("a", 5, 5, 80, 80))
            ),
            hoop
        );
        Assert.Equal("SPL3011", Assert.Single(result.Diagnostics).Code);
    }

    [Theory]
    [InlineData(10, 90)]
    [InlineData(290, 10)]
    public void TheFieldThatHoldsThePreferredPointIsSewnFirst(double x, double y)
    {
        var recipe = Samples.Recipe(Samples.Hoop(130, 180));
        var first = Point.FromMillimetres(x, y);
        var plan = Plan(
            recipe with
            {
                Fields = recipe.Fields with { First = first },
            },
            Samples.Drawing(Samples.Rectangle("a", 0, 0, 300, 100))
        );
        Assert.True(plan.Hoopings[0].Field.Usable.Contains(first));
    }

    /// <summary>A point to be held is no reason for more fields where one of the fewest holds it anyway.</summary>
    [Fact]
    public void APreferredPointCostsNoField()
    {
        var drawing = Samples.Drawing(
            Samples.Fill("tee", 0, 0, 300, 0, 300, 120, 0, 120),
            Samples.Rectangle("left", 30, 200, 50, 80),
            Samples.Rectangle("right", 240, 180, 50, 110)
        );
        var recipe = Samples.Recipe(Samples.Hoop(130, 180));
        var chosen = recipe with { Fields = recipe.Fields with { First = Point.FromMillimetres(150, 60) } };
        Assert.Equal(Plan(recipe, drawing).Hoopings.Length, Plan(chosen, drawing).Hoopings.Length);
    }

    [Fact]
    public void APreferredPointThatNoFieldHoldsIsAnError()
    {
        var hoop = Samples.Hoop(100, 100);
        var recipe = Samples.Recipe(hoop, new ListedFields([new(Point.FromMillimetres(50, 50), Turn.None)]));
        var result = Planner.Plan(
            new(
                recipe with
                {
                    Fields = recipe.Fields with { First = Point.FromMillimetres(150, 50) },
                },
                Samples.Drawing(Samples.Rectangle("a", 5, 5, 80, 80))
            ),
            hoop
        );
        Assert.Equal("SPL3012", Assert.Single(result.Diagnostics).Code);
    }

    /// <summary>A seam through a plain field of colour: its ends and the line that crosses it can be judged, its middle cannot.</summary>
    [Fact]
    public void AlignmentStitchesLieOnLinesAndEdgesInTheField()
    {
        var fields = new ListedFields([
            new(Point.FromMillimetres(65, 90), Turn.None),
            new(Point.FromMillimetres(155, 90), Turn.None),
        ]);
        var plan = Plan(
            Samples.Recipe(Samples.Hoop(130, 180), fields),
            Samples.Drawing(Samples.Rectangle("sea", 5, 10, 210, 160), Samples.Run("line", 10, 100, 210, 100))
        );
        var crosses = plan.Hoopings[1].Alignments;
        Assert.Equal(3, crosses.Length);
        Assert.Contains(crosses, c => c.On == "line" && c.At.Y == 100_000);
        Assert.All(
            crosses.Where(c => c.On == "sea"),
            c => Assert.True(Math.Min(Math.Abs(c.At.Y - 10_000), Math.Abs(c.At.Y - 170_000)) <= 200, $"{c}")
        );
        Assert.All(
            crosses,
            c => Assert.True(plan.Hoopings[1].Field.Usable.Grown(-AlignmentStitch.Arm).Contains(c.At), $"{c}")
        );
    }

    private static Plan Plan(Recipe recipe, Drawing drawing)
    {
        var result = Planner.Plan(new(recipe, drawing), recipe.Hoops[0]);
        Assert.True(result.Succeeded, string.Join("\n", result.Diagnostics));
        return result.Value;
    }
}
