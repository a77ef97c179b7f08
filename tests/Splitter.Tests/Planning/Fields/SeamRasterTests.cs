using CsCheck;
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

    /// <summary>
    /// The same where only one side of the edge lies in the common ground from 80 to 120, which has no room for a seam in its
    /// outermost cells of 2 mm.
    /// </summary>
    [Theory]
    [InlineData(82)]
    [InlineData(118)]
    public void AnEdgeIsSeenFromEitherSide(int edge) =>
        Assert.InRange(
            Least(
                Samples.Rectangle("one", -150, 0, 150 + edge, 100),
                Samples.Rectangle("other", edge, 0, 350 - edge, 100)
            ),
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

    /// <summary>The same drawing with x and y exchanged, for fields one above the other.</summary>
    [Fact]
    public void ALevelSeamIsAnUprightOneOnItsSide() =>
        Gen.Int[0, 100]
            .Array[12]
            .Holds(at =>
            {
                // Bars and lines; cells of 2 mm, so that edges at odd ones lie in the middle of a cell for both.
                Shape[] upright =
                [
                    Samples.Rectangle("bar", (2 * at[0]) + 1, at[1], 31, 2 + at[2]),
                    Samples.Run("line", 2 * at[3], at[4], 2 * at[5], at[6]),
                    Samples.Rectangle("sheet", -60 + at[7], at[8] - 50, 150, 90),
                    Samples.Rectangle("frame", 0, 0, 200, 200),
                    Samples.Run("long", -10, at[9], 250, at[10]),
                ];
                var level = upright.Select(OnItsSide).ToArray();
                Assert.Equal(
                    new SeamRaster(Samples.Drawing(upright)).Least(Left, Right, upright: true),
                    new SeamRaster(Samples.Drawing(level)).Least(OnItsSide(Left), OnItsSide(Right), upright: false),
                    2 * SeamPrice.LineCrossing * 0.01
                );
            });

    /// <summary>A bar right across leaves its height to show; one that leaves a gap beside it does not.</summary>
    [Fact]
    public void ASeamGoesRoundWhatDoesNotReachAcross()
    {
        Assert.InRange(Least(Samples.Rectangle("bar", 0, 30, 240, 20)), 18, 22);
        Assert.Equal(0, Least(Samples.Rectangle("bar", 0, 30, 112, 20), Samples.Rectangle("far", 0, 190, 300, 1)));
        Assert.Equal(0, Least(Samples.Rectangle("bar", 88, 30, 150, 20), Samples.Rectangle("far", 0, 190, 300, 1)));
    }

    /// <summary>A line is hidden by what is sewn over it, and not by what lies under it.</summary>
    [Fact]
    public void WhatIsSewnLaterHidesALine()
    {
        var (line, patch) = (Samples.Run("line", -50, 50, 250, 50), Samples.Rectangle("patch", -50, 40, 300, 20));
        Assert.InRange(Least(line, patch), 18, 22);
        Assert.InRange(Least(patch, line), 18 + SeamPrice.LineCrossing, 22 + SeamPrice.LineCrossing);
    }

    private static Box OnItsSide(Box box) => new(box.Top, box.Left, box.Bottom, box.Right);

    private static Shape OnItsSide(Shape shape)
    {
        Polyline Turned(Polyline line) => new([.. line.Points.Select(p => new Point(p.Y, p.X))]);
        var ground = Polygons.FromRings(
            shape.Footprint.Rings.Select(r => new Ring([.. r.Points.Select(p => new Point(p.Y, p.X))])),
            FillRule.EvenOdd
        );
        return shape is RunShape run
            ? run with
            {
                Lines = [.. run.Lines.Select(Turned)],
                Footprint = ground,
            }
            : shape with
            {
                Footprint = ground,
            };
    }

    private static double Least(params ReadOnlySpan<Shape> shapes) =>
        new SeamRaster(Samples.Drawing(shapes)).Least(Left, Right, upright: true);
}
