using Splitter.Geometry;
using Splitter.Planning.Fields.Covering;

namespace Splitter.Tests.Planning.Fields;

/// <summary>A plate of 100 x 100 mm with slots, and whether a box of 20 x 20 mm in it is all plate. Millimetres.</summary>
public sealed class DrawnGroundTests
{
    [Theory]
    [InlineData(new[] { 10.0, 50, 90, 50, 90, 52, 10, 52 }, false)] // Right across the box, level and upright.
    [InlineData(new[] { 50.0, 10, 52, 10, 52, 90, 50, 90 }, false)]
    [InlineData(new[] { 30.0, 30, 70, 70, 70, 72, 30, 32 }, false)] // On the slant.
    [InlineData(new[] { 49.0, 49, 51, 49, 51, 51, 49, 51 }, false)] // All of it inside.
    [InlineData(new[] { 55.0, 10, 57, 10, 57, 45, 55, 45 }, false)] // Ends inside.
    [InlineData(new[] { 10.0, 30, 90, 30, 90, 40, 10, 40 }, true)] // Up to the box, which it only touches.
    [InlineData(new[] { 30.0, 10, 40, 10, 40, 90, 30, 90 }, true)]
    [InlineData(new[] { 70.0, 10, 72, 10, 72, 90, 70, 90 }, true)]
    public void ASlotThatComesIntoABoxLeavesItNotWhole(double[] slot, bool isWhole)
    {
        var plate = Polygons.Subtract(Samples.Ground(0, 0, 100, 0, 100, 100, 0, 100), Samples.Ground(slot));
        Assert.Equal(isWhole, new DrawnGround([plate], plate.Bounds).HoldsDeep(new(40_000, 40_000, 60_000, 60_000)));
    }

    [Theory]
    [InlineData(50, 50, true)]
    [InlineData(0, 50, true)]
    [InlineData(101, 50, false)]
    [InlineData(150, 150, true)]
    [InlineData(300, 150, false)]
    public void APlaceIsDrawnWhereSomeShapeHoldsIt(int x, int y, bool holds)
    {
        var ground = new DrawnGround(
            [Samples.Ground(0, 0, 100, 0, 100, 100, 0, 100), Samples.Ground(140, 140, 160, 140, 160, 160, 140, 160)],
            new(0, 0, 160_000, 160_000)
        );
        Assert.Equal(holds, ground.Holds(Point.FromMillimetres(x, y)));
    }
}
