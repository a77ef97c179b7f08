using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

/// <summary>
/// What a seam of 40 mm, from 100, 60 down to 100, 100, shows of drawings on a sheet of 200 x 200 mm that no field holds;
/// the fields hold what is up to 60 mm wide.
/// </summary>
public sealed class SeamPriceTests
{
    private static readonly FillShape Sheet = Samples.Rectangle("sheet", 0, 0, 200, 200);

    private static readonly ImmutableArray<Box> Grounds = [new(70_000, 50_000, 130_000, 110_000)];

    [Fact]
    public void ThroughAFillItShowsItsLength() => Assert.Equal(40, Of([null], Sheet), 6);

    [Fact]
    public void OnBareClothItShowsNothing() =>
        Assert.Equal(
            0,
            Of([null, null], Samples.Rectangle("left", 0, 0, 90, 200), Samples.Rectangle("right", 110, 0, 90, 200)),
            6
        );

    /// <summary>An edge within 0.35 mm on either side, of the fill itself or of another on it.</summary>
    [Theory]
    [InlineData(100.3)]
    [InlineData(99.7)]
    public void AlongAnEdgeItShowsAFifth(double edge) =>
        Assert.Equal(
            40 * SeamPrice.AlongEdge,
            Of([null, null], Sheet, Samples.Rectangle("half", edge, 0, 200 - edge, 200)),
            0.5
        );

    /// <summary>A line of 200 mm through its middle, square and slanting by 45 degrees.</summary>
    [Theory]
    [InlineData(0, 80, 200, 80, 10)]
    [InlineData(0, -20, 200, 180, 14.142)]
    [InlineData(99, -20, 101, 180, 40)] // Nearly along the seam: no more than at 15 degrees.
    [InlineData(0, 59, 200, 59, 0)] // Before its start.
    [InlineData(0, 101, 200, 101, 0)] // After its end.
    [InlineData(0, 80, 90, 80, 0)] // Ends beside it.
    public void ACutLineCountsByItsAngle(double x, double y, double toX, double toY, double shown) =>
        Assert.Equal(
            shown,
            Of([null, null], Samples.Rectangle("far", 180, 0, 20, 200), Samples.Run("line", x, y, toX, toY)),
            0.01
        );

    /// <summary>Where a later fill lies over the line, nobody sees the cut.</summary>
    [Theory]
    [InlineData(75, 10, 10)] // Over the crossing: ten millimetres through the patch.
    [InlineData(62, 10, 20)] // Beside it.
    public void ALineThatIsCoveredThereCountsNothing(double top, double height, double shown)
    {
        var patch = Samples.Rectangle("patch", 60, top, 140, height);
        Assert.Equal(shown, Of([null, null], Samples.Run("line", 0, 80, 200, 80), patch), 0.5);
    }

    /// <summary>A motif that stays whole hides the seam below it, if the later field sews it.</summary>
    [Theory]
    [InlineData(1, 20)]
    [InlineData(0, 40)]
    public void AMotifOfTheLaterFieldHidesASeam(int owner, double shown) =>
        Assert.Equal(shown, Of([null, owner], Sheet, Samples.Rectangle("motif", 90, 70, 20, 20)), 0.5);

    private static double Of(ImmutableArray<int?> owners, params Shape[] shapes)
    {
        var drawing = Samples.Drawing(shapes);
        var wholeness = new Wholeness(drawing, Grounds);
        return new SeamPrice(drawing, wholeness, new CoverMap(drawing, wholeness)).Of(
            new Polyline([Point.FromMillimetres(100, 60), Point.FromMillimetres(100, 100)]),
            1,
            owners
        );
    }
}
