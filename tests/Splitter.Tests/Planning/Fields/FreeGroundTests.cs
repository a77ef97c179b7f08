using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fields;

/// <summary>
/// A square cloth of 300 mm with a forbidden zone of 10 x 10 mm in its middle, and fields of 100 x 100 mm: their edges may
/// touch it. Millimetres.
/// </summary>
public sealed class FreeGroundTests
{
    private static readonly Box Cloth = new(0, 0, 300_000, 300_000);
    private static readonly Box Zone = new(145_000, 145_000, 155_000, 155_000);

    private static FreeGround Free => FreeGround.Of(new FieldTemplate(Samples.Hoop(100, 100), 0, 0), [Zone], Cloth);

    [Fact]
    public void AllButTheZoneCanBeSewn()
    {
        var left = Polygons.Subtract(Region.Of(Cloth), Free.Ground);
        // Fields may come a micrometre nearer than they may lie.
        Assert.InRange(left.Area, 9_998.0 * 9_998, 10_000.0 * 10_000);
        Assert.Equal(Zone.Centre, left.Bounds.Centre);
    }

    /// <summary>Beside the zone on each side a whole field has room, and over it none.</summary>
    [Theory]
    [InlineData(100, 45, 200, 145, true)]
    [InlineData(100, 155, 200, 255, true)]
    [InlineData(45, 100, 145, 200, true)]
    [InlineData(155, 100, 255, 200, true)]
    [InlineData(100, 46, 200, 146, false)]
    [InlineData(46, 100, 146, 200, false)]
    [InlineData(140, 100, 146, 150, false)]
    [InlineData(0, 0, 101, 20, false)]
    public void WhatAFieldHoldsBesideIt(int left, int top, int right, int bottom, bool holds) =>
        Assert.Equal(holds, Free.Holds(new(left * 1000, top * 1000, right * 1000, bottom * 1000)));

    /// <summary>A throat at the hoop's top with room for 50 mm, on a cloth of 300 mm; allowed turns are none and half.</summary>
    [Theory]
    [InlineData(100, false)]
    [InlineData(101, true)]
    [InlineData(150, true)]
    [InlineData(199, true)]
    [InlineData(200, false)]
    public void AThroatForbidsWhereNoAllowedTurnLeavesLittleClothInIt(int y, bool forbids)
    {
        var recipe = Samples.Recipe(Samples.Hoop(120, 100) with { Throat = new(HoopSide.Top, 50_000) });
        recipe = recipe with
        {
            Fields = recipe.Fields with { Turns = [Turn.None, Turn.Half] },
            Cloth = new() { Size = (300_000, 300_000) },
        };
        var field = new Field(recipe.Hoops[0], Point.FromMillimetres(150, y), Turn.None, 0);
        Assert.Equal(forbids, Turning.Of(recipe, recipe.Hoops[0]).Forbids(field));
    }
}
