using CsCheck;
using Splitter.Geometry;
using Splitter.Planning.Fields;

namespace Splitter.Tests.Planning.Fields;

public sealed class ClothEdgeTests
{
    /// <summary>
    /// Artwork that one field holds, anywhere on a cloth that is larger than the hoop: 1 mm of margin is more than stitches
    /// reach and the tape rounds, so there is always a place from which the field covers it all and lies on the cloth.
    /// </summary>
    [Fact]
    public void AFieldWithRoomOnTheClothLiesOnIt() =>
        (
            from width in Gen.Int[5, 90]
            from height in Gen.Int[5, 120]
            from right in Gen.Int[1, 299]
            from down in Gen.Int[1, 299]
            select (width, height, X: Math.Min(right, 299 - width), Y: Math.Min(down, 299 - height))
        ).Holds(
            s =>
            {
                var recipe = Samples.Recipe(Samples.Hoop(100, 130)) with
                {
                    Cloth = new() { Size = (300_000, 300_000), ArtworkAt = Point.FromMillimetres(s.X, s.Y) },
                };
                var drawing = Samples.Drawing(Samples.Rectangle("patch", 0, 0, s.width, s.height));
                var found = FieldPlacer.Place(recipe, drawing, recipe.Hoops[0]);
                Assert.All(
                    found.Value,
                    layout => Assert.True(recipe.Cloth.OnDrawing!.Value.Contains(Assert.Single(layout.Fields).Bounds))
                );
                Assert.Empty(ClothEdge.Warnings(recipe, found.Value[0].Fields));
            },
            cases: 40
        );

    [Theory]
    [InlineData(-20, -5, 80, 95, 20, 5)]
    [InlineData(250, 10, 350, 110, -50, 0)]
    [InlineData(-10, 260, 90, 360, 10, -60)]
    [InlineData(-30, 0, 310, 100, 0, 0)]
    [InlineData(-30, 0, 290, 100, 10, 0)]
    public void AStepInwardsIsTheLeastThatHelps(int left, int top, int right, int bottom, int dx, int dy) =>
        Assert.Equal(
            Point.FromMillimetres(dx, dy),
            ClothEdge.Inwards(new(0, 0, 300_000, 300_000), new(left * 1000, top * 1000, right * 1000, bottom * 1000))
        );
}
