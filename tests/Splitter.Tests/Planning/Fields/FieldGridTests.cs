using CsCheck;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fields;

/// <summary>Columns and rows written in a recipe.</summary>
public sealed class FieldGridTests
{
    /// <summary>Centres lie on the tape's grid, so fields that are just enough side by side are counted in whole steps of it.</summary>
    [Fact]
    public void GridsWithEnoughFieldsNeverLetTheArtworkStickOut() =>
        Gen.Select(Gen.Int[10_000, 900_001], Gen.Int[-70_003, 70_003], Gen.Int[0, 3], Gen.Int[0, 4_001])
            .Holds(
                (width, left, more, pull) =>
                {
                    var template = new FieldTemplate(Samples.Hoop(130, 180), 3000, pull + Units.TapeStep);
                    var ground = template.Ground(template.At(default, Turn.None));
                    var step = ground.Width / Units.TapeStep * Units.TapeStep;
                    // Half a step is lost at either end at most: the artwork's edges need not lie on the grid.
                    var columns = ((width + (2 * Units.TapeStep)) / step) + 1 + more;
                    var cover = new Box(left, 0, left + width, 100_001);
                    var fields = FieldGrid.Fields(cover, new(columns, 1, Turn.None), template);
                    var at = cover.Left;
                    foreach (var box in fields.Select(template.Ground).OrderBy(g => g.Left))
                    {
                        Assert.True(box.Left <= at, $"gap at {at}");
                        Assert.True(box.Top <= cover.Top && box.Bottom >= cover.Bottom);
                        at = Math.Max(at, box.Right);
                    }
                    Assert.True(at >= cover.Right, $"sticks out by {cover.Right - at}");
                },
                1000
            );

    /// <summary>The rooster: 450 mm wide, three fields turned upright side by side.</summary>
    [Fact]
    public void OuterFieldsAreRoundedOutwards()
    {
        var template = new FieldTemplate(Samples.Hoop(200, 300), 3000, 300);
        var cover = new Box(37, 41, 450_037, 449_990);
        var grounds = FieldGrid.Fields(cover, new(3, 2, Turn.None), template).Select(template.Ground).ToList();
        Assert.True(Box.Around(grounds).Contains(cover));
    }

    /// <summary>What the message advises is written, and planned.</summary>
    [Fact]
    public void TooFewColumnsAreOneErrorWhoseAdviceCanBeFollowed()
    {
        var hoop = Samples.Hoop(100, 100);
        var drawing = Samples.Drawing(
            Samples.Rectangle("a", 0, 0, 350, 90),
            Samples.Rectangle("b", 10, 92, 320, 5),
            Samples.Rectangle("c", 10, 98, 310, 5)
        );
        var few = Planner.Plan(new(Samples.Recipe(hoop, new GridFields(2, 1, Turn.None)), drawing), hoop);
        var error = Assert.Single(few.Diagnostics);
        Assert.Contains("and 2 more shapes; ", error.Message, StringComparison.Ordinal);
        Assert.Contains("write 'columns: 4' and 'rows: 2' or more", error.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("fewest", error.Message, StringComparison.Ordinal);
        var enough = Planner.Plan(new(Samples.Recipe(hoop, new GridFields(4, 2, Turn.None)), drawing), hoop);
        Assert.True(enough.Succeeded, string.Join('\n', enough.Diagnostics));
    }
}
