using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Drafting;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Drafting;

/// <summary>What is said of hoopings that sew nothing: fields of 100 mm, of which the second lies beside the artwork.</summary>
public sealed class YieldRemarksTests
{
    private static readonly Hoop Hoop = Samples.Hoop(100, 100);

    private static readonly Drawing Drawing = Samples.Drawing(
        Samples.Rectangle("one", 0, 0, 90, 90),
        Samples.Rectangle("other", 170, 0, 90, 90)
    );

    private static readonly PlanDraft Draft = HandDraft.Of(Hoop, [0, 92, 165], [0, 2]);

    /// <summary>What it leads on to could lie nearer; what leads nowhere is only too much.</summary>
    [Theory]
    [InlineData(true, "take a larger hoop, or move what is sewn by C nearer to the rest")]
    [InlineData(false, "take a larger hoop")]
    public void AHoopingThatSewsNothingIsThereForThoseThatAreSetByIt(bool leadsOn, string advice)
    {
        var corner = new Corner("B1", default, default, default, 1, [2]);
        var remark = Assert.Single(Remarks(Samples.Recipe(Hoop), Draft with { Corners = leadsOn ? [corner] : [] }));
        Assert.EndsWith(advice, remark, StringComparison.Ordinal);
    }

    /// <summary>A field that a person has laid is theirs to leave out.</summary>
    [Theory]
    [InlineData(true, "lay others so that they share ground, and leave this one out")]
    [InlineData(false, "leave it out")]
    public void AFieldThatWasLaidIsSpokenOfAsThat(bool leadsOn, string advice)
    {
        var fields = Draft.Layout.Fields.Select(f => new ListedField(f.Centre, f.Turn));
        var recipe = Samples.Recipe(Hoop, new ListedFields([.. fields]));
        var corner = new Corner("B1", default, default, default, 1, [2]);
        var remark = Assert.Single(Remarks(recipe, Draft with { Corners = leadsOn ? [corner] : [] }));
        Assert.EndsWith(advice, remark, StringComparison.Ordinal);
    }

    /// <summary>A first field that holds a point of the recipe, and one where folds cross.</summary>
    [Fact]
    public void AFirstFieldThatSewsNothingIsTheRecipesPoint()
    {
        var draft = HandDraft.Of(Hoop, [92, 0, 165], [1, 2]);
        var recipe = Samples.Recipe(Hoop);
        recipe = recipe with { Fields = recipe.Fields with { First = new Point(142_000, 50_000) } };
        Assert.Contains("write a point further into the artwork", Assert.Single(Remarks(recipe, draft)));
    }

    private static ImmutableArray<string> Remarks(Recipe recipe, PlanDraft draft) =>
        [.. YieldRemarks.Of(recipe, Drawing, draft).Select(d => d.Message)];
}
