using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fields;

/// <summary>
/// Cloth of 400 x 600 mm, folded in the middle both ways; the artwork begins 50 mm in and 80 mm down, so that the folds
/// cross at 150, 220 mm of it.
/// </summary>
public sealed class FoldsTests
{
    private static readonly Cloth Folded = new()
    {
        Size = (400_000, 600_000),
        ArtworkAt = Point.FromMillimetres(50, 80),
        Folds = new(new(null, false), new(null, false)),
    };

    [Fact]
    public void FoldsCrossInTheMiddleOfTheCloth() =>
        Assert.Equal(Point.FromMillimetres(150, 220), Folds.Crossing(Folded));

    [Fact]
    public void OneFoldCrossesNothing()
    {
        Assert.Null(Folds.Crossing(Folded with { Folds = new(Folded.Folds.Upright, null) }));
        Assert.Null(Folds.Held(Folded with { Folds = new(null, Folded.Folds.Level) }, default));
    }

    /// <summary>15 mm of the level fold on either side; of the upright one 30 mm towards the work and 2 mm beyond.</summary>
    [Theory]
    [InlineData(100, 190, 222)]
    [InlineData(300, 218, 250)]
    public void TheFirstFieldHoldsThirtyMillimetresOfEach(int towards, int top, int bottom) =>
        Assert.Equal(
            new Box(135_000, top * 1000, 165_000, bottom * 1000),
            Folds.Held(Folded, Point.FromMillimetres(150, towards))
        );

    /// <summary>From edge to edge of what the field may sew, on the tape's grid and never beyond.</summary>
    [Fact]
    public void LinesRunAcrossTheField()
    {
        var field = new Field(Samples.Hoop(100, 80), Point.FromMillimetres(140, 200), Turn.None, 5_040);
        Assert.Equal(
            [
                new(Fold.Upright, new(150_000, 165_100), new(150_000, 234_900)),
                new(Fold.Level, new(95_100, 220_000), new(184_900, 220_000)),
            ],
            Folds.LinesIn(Folded, field).AsEnumerable()
        );
    }

    [Theory]
    [InlineData(140, 300, Fold.Upright)]
    [InlineData(300, 200, Fold.Level)]
    internal void AFieldBesideAFoldHasNoLineForIt(int x, int y, Fold only)
    {
        var field = new Field(Samples.Hoop(100, 80), Point.FromMillimetres(x, y), Turn.None, 0);
        Assert.Equal(only, Assert.Single(Folds.LinesIn(Folded, field)).Fold);
    }
}
