using Splitter.Geometry;
using Splitter.Planning.Fields;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fields;

/// <summary>What a person is told who has laid fields that cannot sew everything.</summary>
public sealed class FieldAdviceTests
{
    private static readonly Hoop Small = Samples.Hoop(100, 80);
    private static readonly FieldTemplate Template = new(Small, 5_000, 500);

    /// <summary>A field sews 89 x 69 mm: 11 mm less, and a step of the tape, since its middle lies on that.</summary>
    [Fact]
    public void AHoopThatHoldsAShapeIsAsLargeAsItsMargins() =>
        Assert.Contains(
            "at least 131.1 x 71.3 mm",
            LargerField.Advice(Samples.Recipe(Small), Template, new(0, 0, 120_000, 60_123)),
            StringComparison.Ordinal
        );

    [Fact]
    public void AShapeThatFitsTheOtherWayAsksForThatTurn() =>
        Assert.Equal(
            "allow both 0 deg and 90 deg under 'fields.turns'",
            LargerField.Advice(Samples.Recipe(Small), Template with { Turns = [Turn.None] }, new(0, 0, 60_000, 80_000))
        );

    [Fact]
    public void TheSmallestHoopOfTheRecipeThatHoldsItIsNamed()
    {
        var recipe = Samples.Recipe(Small) with
        {
            Hoops = [Small, new("wide", 300_000, 300_000), new("slim", 500_000, 70_000), new("just", 140_000, 120_000)],
        };
        Assert.Contains(
            "hoop just of the recipe (140 x 120 mm) holds it: call with '--hoop just', or take hoop test out",
            LargerField.Advice(recipe, Template, new(0, 0, 120_000, 60_000)),
            StringComparison.Ordinal
        );
    }

    /// <summary>A bar of 160 x 60 mm, of which one field in the middle sews 89 x 69.</summary>
    [Fact]
    public void WhereListedFieldsDoNotReachOneIsToBeAdded() =>
        Assert.Contains(
            "sticks out of every field, by 35.5 mm at x 160, y 60; add a field there, move one, or write 'place: fewest'",
            Problem(new ListedFields([]))
        );

    [Fact]
    public void WhereAFixedFieldIsMissingOneIsToBeLaid() =>
        Assert.Contains("lay a field there under 'fields.fixed', or take a larger hoop", Problem(new FewestFields()));

    /// <summary>
    /// Two columns hold the bar, and share ground for corners; a short bar one alone would, if stitches might go as far as the
    /// hoop's edge. There are rows enough.
    /// </summary>
    [Theory]
    [InlineData(160, "write 'columns: 2' and 'rows: 4' or more")]
    [InlineData(180, "write 'columns: 3' and 'rows: 4' or more")]
    [InlineData(95, "write 'columns: 2' and 'rows: 4' or more, or a smaller 'fields.clearance'")]
    public void WhereAGridIsTooSmallItsNumbersAreGiven(int length, string advice) =>
        Assert.EndsWith(advice, Problem(new GridFields(1, 4, Turn.None), length), StringComparison.Ordinal);

    private static string Problem(FieldPlacement place, int length = 160)
    {
        var drawing = Samples.Drawing(Samples.Rectangle("bar", 0, 0, length, 60));
        var field = Template.At(Point.FromMillimetres(length / 2.0, 30), Turn.None);
        return Coverage
            .Problems(Samples.Recipe(Small, place), drawing, new([field], [Template.Ground(field)], 1), Template)
            .Single()
            .ToString();
    }
}
