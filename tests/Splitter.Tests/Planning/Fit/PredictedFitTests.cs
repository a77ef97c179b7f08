using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fit;

/// <summary>
/// The 2-D form of the target registration error of Fitzpatrick, West and Maurer 1998 (IEEE TMI 17(5):694-702). The table
/// was computed from the formula and by a Monte Carlo of 200,000 rigid fits, outside this code base.
/// </summary>
public sealed class PredictedFitTests
{
    /// <summary>A localisation error of 1 mm in all is 1/sqrt 2 mm per axis.</summary>
    private static readonly double PerAxis = 1000 / Math.Sqrt(2);

    [Theory]
    [InlineData("0,0 130,0", 65, 0, 0.7071)]
    [InlineData("0,0 130,0", 0, 0, 0.8660)]
    [InlineData("0,0 130,0 0,180", 130, 180, 0.8165)]
    [InlineData("0,0 130,0 130,180 0,180", 65, 90, 0.5000)]
    [InlineData("0,0 130,0 130,180 0,180", 130, 180, 0.6124)]
    public void AgreesWithThePublishedFormula(string corners, double x, double y, double expected)
    {
        ImmutableArray<Point> marks =
        [
            .. corners
                .Split(' ')
                .Select(c => c.Split(','))
                .Select(c => Point.FromMillimetres(double.Parse(c[0]), double.Parse(c[1]))),
        ];
        var at = Point.FromMillimetres(x, y);
        Assert.Equal(expected, Math.Sqrt(CornerFit.Variance(marks.AsSpan(), PerAxis, at)) / 1000, 4);

        // One donor: the general way, which knows of no such formula, comes to the same.
        var poses = new Poses(2, PerAxis, new Stretch(), default);
        poses.AddFirst();
        poses.Add([.. marks.Select(m => new TakenCorner(m, 0))]);
        Assert.Equal(expected, Math.Sqrt(poses.Variance(0, 1, at)) / 1000, 4);
    }

    [Fact]
    public void SquaresAddUpAlongTheChainAndCommonWaysCancel()
    {
        // 0 - 1 - 2 and 0 - 3: parts 2 and 3 have three settings between them, 1 and 2 have one.
        var recipe = Samples.Recipe(Samples.Hoop(100, 100));
        ImmutableArray<Corner> corners =
        [
            Mark("A1", 0, 0, donor: 0, receiver: 1),
            Mark("A2", 100, 0, donor: 0, receiver: 1),
            Mark("B1", 0, 0, donor: 1, receiver: 2),
            Mark("B2", 100, 0, donor: 1, receiver: 2),
            Mark("A3", 0, 0, donor: 0, receiver: 3),
            Mark("A4", 100, 0, donor: 0, receiver: 3),
        ];
        var fit = new PredictedFit(recipe, 4, corners);
        var middle = Point.FromMillimetres(50, 0);
        var one = fit.Budget(1, 2, middle).Setting;
        Assert.Equal(300, one, 6); // two marks: sqrt 2 * 0.3 mm / sqrt 2
        Assert.Equal(one * Math.Sqrt(3), fit.Budget(2, 3, middle).Setting, 6);
        Assert.Equal(one * Math.Sqrt(2), fit.Budget(1, 3, middle).Setting, 6);
        Assert.Equal(0, fit.Budget(2, 2, middle).Setting);
    }

    [Fact]
    public void ClothThatGivesAddsItsStrainTimesTheDistance()
    {
        // The warp runs up the drawing: 100 mm along it from the nearer corner at 0.2 % is 0.2 mm.
        var at = Point.FromMillimetres(100, 100);
        ImmutableArray<Corner> corners =
        [
            Mark("A1", 0, 0, donor: 0, receiver: 1),
            Mark("A2", 100, 0, donor: 0, receiver: 1),
        ];
        var stiff = Fit(new Stretch(), corners, 2).Budget(0, 1, at);
        var warp = Fit(new Stretch { Warp = 0.002, WarpDirection = 90 }, corners, 2).Budget(0, 1, at);
        Assert.Equal(0, stiff.Warp);
        Assert.Equal(200, warp.Warp, 6);
        Assert.Equal((0, 0), (warp.Weft, warp.Bias));
        Assert.Equal(stiff.Setting, warp.Setting);
    }

    /// <summary>Two donors that have nothing in common but the first: the receiver's shift is the mean of theirs.</summary>
    [Fact]
    public void TwoDonorsErrorsAreSharedOut()
    {
        // Parts 1 and 2 are set by A's corners far to the left and right; part 3 takes one corner of each, at their centroids.
        ImmutableArray<Corner> corners =
        [
            Mark("A1", 0, 0, donor: 0, receiver: 1),
            Mark("A2", 0, 100, donor: 0, receiver: 1),
            Mark("A3", 200, 0, donor: 0, receiver: 2),
            Mark("A4", 200, 100, donor: 0, receiver: 2),
            Mark("B1", 0, 50, donor: 1, receiver: 3),
            Mark("C1", 200, 50, donor: 2, receiver: 3),
        ];
        var fit = Fit(new Stretch(), corners, 4);
        // sigma = 0.3 mm. Each donor's centroid: sigma²/2 per axis; the mean of two: sigma²/4; the setting itself sigma²/2.
        var middle = fit.Budget(0, 3, Point.FromMillimetres(100, 50)).Setting;
        Assert.Equal(300 * Math.Sqrt(2 * 0.75), middle, 6);
        // At donor 1's corner the receiver follows half of its shift along the line of corners, all of it across.
        // Along: half the difference of both donors, sigma²/4, and sigma²/2. Across: sigma² for the one corner alone.
        var atDonor = fit.Budget(1, 3, Point.FromMillimetres(0, 50)).Setting;
        Assert.Equal(300 * Math.Sqrt(0.25 + 0.5 + 1), atDonor, 6);
    }

    [Fact]
    public void AHoopingsClothGivesOnlyUpToTheCornersOfTheNext()
    {
        // 0 - 1 - 2 up the warp: part 1 is set at y 0, part 2 at y 100; the place at y 150 is 100 and 50 mm from them.
        var recipe = Samples.Recipe(Samples.Hoop(100, 100)) with
        {
            Registration = new() { Accuracy = 0 },
            Cloth = new()
            {
                Stretch = new() { Warp = 0.002, WarpDirection = 90 },
            },
        };
        ImmutableArray<Corner> corners =
        [
            Mark("A1", 0, 0, donor: 0, receiver: 1),
            Mark("A2", 100, 0, donor: 0, receiver: 1),
            Mark("B1", 0, 100, donor: 1, receiver: 2),
            Mark("B2", 100, 100, donor: 1, receiver: 2),
        ];
        var fit = new PredictedFit(recipe, 3, corners);
        Assert.Equal(Math.Sqrt((200 * 200) + (100 * 100)), fit.Budget(0, 2, Point.FromMillimetres(50, 150)).Warp, 6);
    }

    private static PredictedFit Fit(Stretch stretch, ImmutableArray<Corner> corners, int hoopings) =>
        new(Samples.Recipe(Samples.Hoop(100, 100)) with { Cloth = new() { Stretch = stretch } }, hoopings, corners);

    private static Corner Mark(string id, double x, double y, int donor, int receiver) =>
        new(id, Point.FromMillimetres(x, y), default, default, donor, [receiver]);
}
