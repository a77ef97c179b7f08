using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fields;

/// <summary>Zones that leave ground without a field are named, each once.</summary>
public sealed class ForbiddenZonesTests
{
    private static readonly Hoop Hoop = Samples.Hoop(130, 180);

    [Fact]
    public void AZoneOverAllIsOneError()
    {
        var error = Assert.Single(Planned([Zone(-50, -50, 600, 500)]));
        Assert.Equal("SPL3015", error.Code);
        Assert.Contains("no field can lie anywhere", error.Message, StringComparison.Ordinal);
        Assert.Contains("x -50 to 550, y -50 to 450 mm", error.Message, StringComparison.Ordinal);
        Assert.Contains("make the zone smaller, or move it", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AZoneAcrossTheWorkIsOneErrorThatSaysWhichGround()
    {
        var error = Assert.Single(Planned([Zone(-10, 100, 450, 10), Zone(0, 900, 10, 10)]));
        Assert.Equal("SPL3014", error.Code);
        Assert.Contains("the forbidden zone at x -10 to 440, y 100 to 110 mm", error.Message, StringComparison.Ordinal);
        // Stitches stay 0.1 mm inside a field (its reach), so that much more on either side is left.
        Assert.Contains("and 1 more shape at x 0 to 300, y ", error.Message, StringComparison.Ordinal);
        Assert.Contains("so leave x", error.Message, StringComparison.Ordinal);
    }

    /// <summary>Of what stays whole all is named, of anything else what no field can sew.</summary>
    [Theory]
    [InlineData(true, "x 20 to 80, y 20 to 80 mm")]
    [InlineData(false, "x 44.9 to 50.1, y 20 to 80 mm")]
    public void WhatStaysWholeIsMissedAsAWhole(bool keepWhole, string ground)
    {
        var recipe = Recipe([Zone(45, -500, 5, 2000)]);
        var drawing = Samples.Drawing(Samples.Rectangle("motif", 20, 20, 60, 60) with { KeepWhole = keepWhole });
        var error = Assert.Single(Diagnostics(recipe, drawing));
        Assert.Contains(ground, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ZonesThatLeaveNoRoomOnlyTogetherAreNamedTogether()
    {
        // Either zone alone leaves room for a field beside it; between both there is none.
        var error = Assert.Single(Planned([Zone(-90, -500, 80, 2000), Zone(80, -500, 10, 2000)], 60));
        Assert.Equal("SPL3015", error.Code);
        Assert.Contains("the 2 forbidden zones together", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AFixedFieldOnAZoneIsOneError()
    {
        var error = Assert.Single(
            Planned([Zone(0, 0, 10, 10)], fixedFields: [new(Point.FromMillimetres(65, 90), Turn.None)])
        );
        Assert.Equal("SPL3011", error.Code);
    }

    /// <summary>Both halves of the work can be sewn, but no field reaches from one to the other.</summary>
    [Fact]
    public void AZoneBetweenTwoHalvesPartsTheFields()
    {
        var recipe = Recipe([Zone(140, -500, 20, 2000)]);
        var halves = Samples.Drawing(
            Samples.Rectangle("west", 20, 20, 60, 60),
            Samples.Rectangle("east", 220, 20, 60, 60)
        );
        var error = Assert.Single(Diagnostics(recipe, halves));
        Assert.Equal("SPL3016", error.Code);
        Assert.Contains("make a zone smaller or move it", error.Message, StringComparison.Ordinal);
        // What is advised helps: a zone that ends lets a field pass.
        Assert.Empty(Diagnostics(Recipe([Zone(140, -500, 20, 450)]), halves));
    }

    /// <summary>All that is drawn can be sewn beside the zone; the point lies in it.</summary>
    [Fact]
    public void AZoneOverTheFirstPointIsNamed()
    {
        var recipe = Recipe([Zone(40, 205, 60, 30)]);
        var first = recipe with { Fields = recipe.Fields with { First = Point.FromMillimetres(70, 215) } };
        Assert.Empty(Diagnostics(recipe));
        var error = Assert.Single(Diagnostics(first));
        Assert.Equal("SPL3017", error.Code);
        Assert.Contains("the forbidden zone at x 40 to 100, y 205 to 235 mm", error.Message, StringComparison.Ordinal);
    }

    /// <summary>A field that can hand on corners but is hardly wider than they are: rows of such fields get nowhere.</summary>
    [Fact]
    public void WhereNoFieldsAreFoundThatIsSaid()
    {
        var narrow = Samples.Hoop(60, 7);
        var drawing = Samples.Drawing(Samples.Rectangle("sky", 0, 0, 300, 200));
        var error = Assert.Single(Planner.Plan(new(Samples.Recipe(narrow), drawing), narrow).Diagnostics);
        Assert.Equal("SPL3018", error.Code);
        Assert.Contains("take a larger hoop", error.Message, StringComparison.Ordinal);
    }

    /// <summary>A point under fields.first asks for the folds as well: what is wrong is said once.</summary>
    [Fact]
    public void FoldsAndAFirstPointThatNothingHoldsAreOneError()
    {
        var hoop = Samples.Hoop(100, 100);
        var recipe = Samples.Recipe(hoop, new ListedFields([new(Point.FromMillimetres(50, 50), Turn.None)])) with
        {
            Cloth = new() { Size = (400_000, 400_000), Folds = new(new(200_000, false), new(200_000, false)) },
        };
        var drawing = Samples.Drawing(Samples.Rectangle("a", 5, 5, 80, 80));
        Assert.Equal("SPL3004", Assert.Single(Planner.Plan(new(recipe, drawing), hoop).Diagnostics).Code);
        var both = recipe with { Fields = recipe.Fields with { First = Point.FromMillimetres(180, 180) } };
        Assert.Equal("SPL3012", Assert.Single(Planner.Plan(new(both, drawing), hoop).Diagnostics).Code);
    }

    /// <summary>The crossing of the folds and a point too far away: what is advised can be written, and is planned.</summary>
    [Fact]
    public void AFirstFieldThatCannotHoldTheFoldsTooSaysWhatCanBeDone()
    {
        var recipe = Recipe([]) with
        {
            Cloth = new() { Size = (340_000, 240_000), Folds = new(new(60_000, false), new(60_000, false)) },
        };
        var far = recipe with { Fields = recipe.Fields with { First = Point.FromMillimetres(280, 60) } };
        var error = Assert.Single(Diagnostics(far));
        Assert.Equal("SPL3012", error.Code);
        Assert.Contains("write a point nearer to the crossing", error.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("move a field", error.Message, StringComparison.Ordinal);
        Assert.Empty(Diagnostics(recipe));
    }

    private static ImmutableArray<Diagnostic> Planned(
        ImmutableArray<Box> zones,
        double width = 300,
        ImmutableArray<ListedField> fixedFields = default
    ) => Diagnostics(Recipe(zones, fixedFields), width);

    private static ImmutableArray<Diagnostic> Diagnostics(Recipe recipe, double width = 300)
    {
        var drawing = Samples.Drawing(
            Samples.Rectangle("sky", 0, 0, width, 105),
            Samples.Rectangle("sea", 0, 105, width, 95)
        );
        return Diagnostics(recipe, drawing);
    }

    private static ImmutableArray<Diagnostic> Diagnostics(Recipe recipe, Drawing drawing) =>
        [.. Planner.Plan(new(recipe, drawing), Hoop).Diagnostics.Where(d => d.Severity == Severity.Error)];

    private static Recipe Recipe(ImmutableArray<Box> zones, ImmutableArray<ListedField> fixedFields = default)
    {
        var recipe = Samples.Recipe(Hoop);
        return recipe with
        {
            Fields = recipe.Fields with { Forbidden = zones, Fixed = fixedFields.IsDefault ? [] : fixedFields },
        };
    }

    private static Box Zone(int x, int y, int width, int height) =>
        new(x * 1000, y * 1000, (x + width) * 1000, (y + height) * 1000);
}
