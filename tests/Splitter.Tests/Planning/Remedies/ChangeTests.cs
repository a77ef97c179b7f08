using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Drafting;
using Splitter.Planning.Remedies;
using Splitter.Recipes;
using Splitter.Tests.Planning.Drafting;

namespace Splitter.Tests.Planning.Remedies;

/// <summary>What is tried where parts may miss each other, as it would be written. None of it is planned here.</summary>
public sealed class ChangeTests
{
    private static readonly Hoop Hoop = Samples.Hoop(100, 100);
    private static readonly Drawing Drawing = Samples.Drawing(Samples.Rectangle("strip", 0, 0, 330, 50));
    private static readonly PlanDraft Draft = HandDraft.Of(Hoop, [0, 80, 150, 230], [null]).Misses(500, 900);

    /// <summary>
    /// Short rows reach 0.6 of the overlap on each side: 0.9 mm ask for 0.75, and a tenth to spare is 0.825, in whole tenths
    /// 0.9 mm.
    /// </summary>
    [Fact]
    public void AnOverlapIsAsWideAsTheWorstMisfitAsksAndATenthMore()
    {
        Assert.Equal(900, Tried(Samples.Recipe(Hoop), fits: 1200)[0].Width);
        Assert.Equal("write 'overlap.width: 0.9 mm'", Tried(Samples.Recipe(Hoop))[0].Text);
    }

    /// <summary>A width that the recipe gives gives way to one that fits, or to what is worked out.</summary>
    [Theory]
    [InlineData(1200, "write 'overlap.width: 1.2 mm'")]
    [InlineData(null, "write 'overlap.width: auto'")]
    public void AWidthThatIsGivenGivesWay(int? fits, string text)
    {
        var recipe = Change.WithWidth(Samples.Recipe(Hoop), 300);
        Assert.Equal((fits, text), (Tried(recipe, fits)[0].Width, Tried(recipe, fits)[0].Text));
    }

    /// <summary>Up to four corners; one more where the recipe has as many, as far as recipes may go.</summary>
    [Theory]
    [InlineData(2, "3 4")]
    [InlineData(3, "4")]
    [InlineData(4, "5")]
    [InlineData(RegistrationRules.MostCorners, "")]
    public void MoreCornersAreTriedOneByOne(int count, string tried)
    {
        var recipe = Samples.Recipe(Hoop);
        recipe = recipe with { Registration = recipe.Registration with { CornerCount = count } };
        Assert.Equal(
            tried.Split(' ', StringSplitOptions.RemoveEmptyEntries),
            Values(recipe, "registration.corners.count")
        );
    }

    /// <summary>Middles of the nearest two others; none where the recipe says which is first.</summary>
    [Fact]
    public void OtherFieldsMayBeFirst()
    {
        var recipe = Samples.Recipe(Hoop);
        Assert.Equal(["[130 mm, 50 mm]", "[200 mm, 50 mm]"], Values(recipe, "fields.first"));
        Assert.Empty(Values(recipe with { Fields = recipe.Fields with { First = default(Point) } }, "fields.first"));
    }

    /// <summary>Only what is larger, the smallest first.</summary>
    [Fact]
    public void LargerHoopsComeLast()
    {
        var recipe = Samples.Recipe(Hoop) with
        {
            Hoops = [Hoop, new("wide", 300_000, 200_000), new("slim", 90_000, 110_000), new("next", 120_000, 100_000)],
        };
        Assert.Equal(
            ["sew it all with hoop next (120 x 100 mm) instead", "sew it all with hoop wide (300 x 200 mm) instead"],
            Tried(recipe).Where(c => c.Key == "hoops").Select(c => c.Text)
        );
    }

    private static IEnumerable<string> Values(Recipe recipe, string key) =>
        Tried(recipe).Where(c => c.Key == key).Select(c => c.Text[(c.Text.IndexOf(':') + 2)..^1]);

    private static ImmutableArray<Change> Tried(Recipe recipe, int? fits = null) =>
        [.. Change.All(new(new Drafts(recipe, Drawing), Draft), fits)];
}
