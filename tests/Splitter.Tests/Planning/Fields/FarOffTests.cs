using Splitter.Geometry;
using Splitter.Planning.Fields;

namespace Splitter.Tests.Planning.Fields;

/// <summary>
/// A hoop of 200 x 60 mm and a motif of 20 x 20 mm from 0, 0: lying, a field around a point 150 mm to the right reaches it,
/// standing one 150 mm further down does.
/// </summary>
public sealed class FarOffTests
{
    [Theory]
    [InlineData(150, 10, true)]
    [InlineData(10, 150, true)]
    [InlineData(150, 150, false)]
    [InlineData(230, 10, false)]
    public void AFirstPointIsFarOffWhereNoTurnOfItsFieldReachesTheArtwork(int x, int y, bool reaches)
    {
        var recipe = Samples.Recipe(Samples.Hoop(200, 60));
        recipe = recipe with { Fields = recipe.Fields with { First = Point.FromMillimetres(x, y) } };
        var problems = FarOff.Problems(
            recipe,
            Samples.Drawing(Samples.Rectangle("motif", 0, 0, 20, 20)),
            new FieldTemplate(recipe.Hoops[0], 0, 0)
        );
        Assert.Equal(reaches, !problems.Any());
    }
}
