using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Fields.Covering;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Fields;

public sealed class SeamRasterTests
{
    private static readonly Box Left = new(0, 0, 120_000, 100_000);
    private static readonly Box Right = new(80_000, 0, 200_000, 100_000);

    /// <summary>Straight through the middle of a fill: as many millimetres as the ground is long, but for a cell.</summary>
    [Fact]
    public void AFillAllOverShowsTheWholeLength() =>
        Assert.InRange(Least(Samples.Rectangle("fill", 0, 0, 200, 100)), 98, 102);

    [Fact]
    public void WhereTwoColoursPartASeamShowsAFifth() =>
        Assert.InRange(
            Least(Samples.Rectangle("one", -150, 0, 241, 100), Samples.Rectangle("other", 91, 0, 241, 100)),
            100 * SeamPrice.AlongEdge * 0.95,
            100 * SeamPrice.AlongEdge * 1.05
        );

    /// <summary>A gap as wide as three cells, slanting through the common ground.</summary>
    [Fact]
    public void AGapShowsNothing() =>
        Assert.Equal(
            0,
            Least(
                Samples.Fill("one", -150, 0, 88, 0, 106, 100, -150, 100),
                Samples.Fill("other", 94, 0, 350, 0, 350, 100, 112, 100)
            )
        );

    /// <summary>However it slants, and wherever the way meets it: three lines, three breaks.</summary>
    [Fact]
    public void EveryLineIsCrossedOnce() =>
        Assert.Equal(
            3 * SeamPrice.LineCrossing,
            Least(
                Samples.Run("level", -50, 20, 250, 20),
                Samples.Run("rising", -50, 90, 250, 30),
                Samples.Run("falling", -50, 55, 250, 95)
            )
        );

    [Fact]
    public void AShapeThatEitherFieldHoldsIsNotCut() =>
        Assert.Equal(0, Least(Samples.Rectangle("held", 85, 10, 110, 80)));

    private static double Least(params ReadOnlySpan<Shape> shapes) =>
        new SeamRaster(Samples.Drawing(shapes)).Least(Left, Right, upright: true);
}
