using System.Collections.Immutable;
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
        Assert.Contains("turn the artwork", error.Message, StringComparison.Ordinal);
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

    /// <summary>The crossing of the folds and a point too far away: what is advised can be written, and is planned.</summary>
    [Fact]
    public void AFirstFieldThatCannotHoldTheFoldsTooSaysWhatCanBeDone()
    {
        var recipe = Recipe([]) with
        {
            Cloth = new()
            {
                Size = (340_000, 240_000),
                UprightFold = 60_000,
                LevelFold = 60_000,
            },
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
        return [.. Planner.Plan(new(recipe, drawing), Hoop).Diagnostics.Where(d => d.Severity == Severity.Error)];
    }

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
