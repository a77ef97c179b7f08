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

    /// <summary>The same of a seam from left to right, and on the slant.</summary>
    [Theory]
    [InlineData(60, 80, 100, 80, 80.3)]
    [InlineData(60, 80, 100, 80, 79.7)]
    [InlineData(100, 80, 60, 80, 80.3)]
    [InlineData(100, 80, 60, 80, 79.7)]
    public void WhicheverWayItGoes(int x, int y, int toX, int toY, double edge) =>
        Assert.Equal(
            40 * SeamPrice.AlongEdge,
            Of([null, null], (x, y), (toX, toY), Sheet, Samples.Rectangle("half", 0, edge, 200, 200 - edge)),
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

    /// <summary>Where a later fill lies over the line, nobody sees the cut: square across, and on the slant.</summary>
    [Theory]
    [InlineData(100, 75, 10)] // Over the crossing: what shows is the way through the patch.
    [InlineData(140, 75, 14.142)]
    [InlineData(100, 62, 20)] // Beside it: the line shows, too.
    [InlineData(140, 62, 28.284)]
    public void ALineThatIsCoveredThereCountsNothing(double to, double top, double shown) =>
        Assert.Equal(
            shown,
            Of([null, null], to, Samples.Run("line", 0, 80, 200, 80), Samples.Rectangle("patch", 90, top, 110, 10)),
            1.0 // Within 0.35 mm of its edges the patch counts less.
        );

    /// <summary>A motif that stays whole hides the seam below it, if the later field sews it.</summary>
    [Theory]
    [InlineData(1, 20)]
    [InlineData(0, 40)]
    public void AMotifOfTheLaterFieldHidesASeam(int owner, double shown) =>
        Assert.Equal(shown, Of([null, owner], Sheet, Samples.Rectangle("motif", 90, 70, 20, 20)), 0.5);

    private static double Of(ImmutableArray<int?> owners, params Shape[] shapes) => Of(owners, 100, shapes);

    /// <param name="to">Where the seam ends, 100 mm down.</param>
    private static double Of(ImmutableArray<int?> owners, double to, params Shape[] shapes) =>
        Of(owners, (100, 60), (to, 100), shapes);

    private static double Of(
        ImmutableArray<int?> owners,
        (double X, double Y) from,
        (double X, double Y) to,
        params Shape[] shapes
    )
    {
        var drawing = Samples.Drawing(shapes);
        var wholeness = new Wholeness(drawing, Grounds);
        return new SeamPrice(drawing, wholeness, new CoverMap(drawing, wholeness)).Of(
            new Polyline([Point.FromMillimetres(from.X, from.Y), Point.FromMillimetres(to.X, to.Y)]),
            1,
            owners
        );
    }
}
