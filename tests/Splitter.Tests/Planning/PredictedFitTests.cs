using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Marks;
using Splitter.Planning.Order;
using Splitter.Recipes;

namespace Splitter.Tests.Planning;

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
        var setting = new PredictedFit.Setting(marks, PerAxis, new Stretch());
        var predicted = Math.Sqrt(setting.SettingVariance(Point.FromMillimetres(x, y))) / 1000;
        Assert.Equal(expected, predicted, 4);
    }

    [Fact]
    public void SquaresAddUpAlongTheChainAndCommonWaysCancel()
    {
        // 0 - 1 - 2 and 0 - 3: parts 2 and 3 have three settings between them, 1 and 2 have one.
        var sequence = new Sequence([0, 1, 2, 3], [null, 0, 1, 0]);
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
        var fit = new PredictedFit(recipe, sequence, corners);
        var middle = Point.FromMillimetres(50, 0);
        var one = fit.Misfit(1, 2, middle);
        Assert.Equal(300, one, 6); // two marks: sqrt 2 * 0.3 mm / sqrt 2
        Assert.Equal(one * Math.Sqrt(3), fit.Misfit(2, 3, middle), 6);
        Assert.Equal(one * Math.Sqrt(2), fit.Misfit(1, 3, middle), 6);
        Assert.Equal(0, fit.Misfit(2, 2, middle));
    }

    [Fact]
    public void ClothThatGivesAddsItsStrainTimesTheDistance()
    {
        ImmutableArray<Point> marks = [Point.FromMillimetres(0, 0), Point.FromMillimetres(100, 0)];
        var at = Point.FromMillimetres(100, 100);
        // The warp runs up the drawing: 100 mm along it from the nearer corner at 0.2 % is 0.2 mm.
        var stiff = new PredictedFit.Setting(marks, 0, new Stretch()).StretchVariance(at);
        var warp = new PredictedFit.Setting(marks, 0, new Stretch { Warp = 0.002, WarpDirection = 90 }).StretchVariance(
            at
        );
        Assert.Equal(0, stiff);
        Assert.Equal(200, Math.Sqrt(warp), 6);
    }

    [Fact]
    public void AHoopingsClothGivesOnlyUpToTheCornersOfTheNext()
    {
        // 0 - 1 - 2 up the warp: part 1 is set at y 0, part 2 at y 100; the place at y 150 is 100 and 50 mm from them.
        var sequence = new Sequence([0, 1, 2], [null, 0, 1]);
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
        var fit = new PredictedFit(recipe, sequence, corners);
        Assert.Equal(Math.Sqrt((200 * 200) + (100 * 100)), fit.Misfit(0, 2, Point.FromMillimetres(50, 150)), 6);
    }

    private static Corner Mark(string id, double x, double y, int donor, int receiver) =>
        new(id, Point.FromMillimetres(x, y), default, default, donor, [receiver]);
}
