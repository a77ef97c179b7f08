using System.Collections.Immutable;
using Splitter.Correcting;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Recipes;

namespace Splitter.Tests.Correcting;

/// <summary>What offsets at holes are taken for. Warp along x; holes at the corners of a square of 100 mm around 120, 80.</summary>
public sealed class JudgementTests
{
    private static readonly Recipe Recipe = Samples.Recipe(Samples.Hoop(200, 200)) with
    {
        Cloth = new() { Stretch = new() { WarpDirection = 0 } },
    };

    private static readonly ImmutableArray<Vector> Square =
    [
        new(70_000, 30_000),
        new(170_000, 30_000),
        new(170_000, 130_000),
        new(70_000, 130_000),
    ];

    private static readonly Vector Middle = new(120_000, 80_000);

    [Fact]
    public void WhatLiesWhereItShouldFits() => Assert.Equal(Verdict.Fits, Of(Square, _ => new(20, -10)).Verdict);

    [Fact]
    public void OneOffsetForAllIsAMove()
    {
        var judged = Of(Square, _ => new(3000, -2000));
        Assert.Equal(Verdict.Moved, judged.Verdict);
        // Back by what was seen.
        Same(new(97_000, 102_000), judged.Lays(Point.FromMillimetres(100, 100)));
    }

    /// <summary>By two hundredths about the middle: a corner of the square comes out a millimetre aside both ways.</summary>
    [Fact]
    public void OffsetsThatGoRoundAreATurn()
    {
        var judged = Of(Square, at => new(-0.02 * (at.Y - Middle.Y), 0.02 * (at.X - Middle.X)));
        Assert.Equal(Verdict.Turned, judged.Verdict);
        Assert.Equal(-0.02, judged.Move.Angle, 1e-3);
        Assert.Null(judged.Followed);
    }

    /// <summary>What came out too far apart has to come nearer, along each thread by its own share.</summary>
    [Theory]
    [InlineData(0.03, 0)]
    [InlineData(0, 0.03)]
    [InlineData(-0.03, 0)]
    [InlineData(0.03, -0.02)]
    [InlineData(0.02, 0.03)]
    public void OffsetsThatGrowOutwardsAreAStretch(double warp, double weft)
    {
        var judged = Of(Square, at => new(warp * (at.X - Middle.X), weft * (at.Y - Middle.Y)));
        Assert.Equal(Verdict.Stretched, judged.Verdict);
        Assert.Equal((-warp, -weft), (Math.Round(judged.Stretch.Warp, 4), Math.Round(judged.Stretch.Weft, 4)));
        Assert.NotNull(judged.Followed);
        Assert.InRange(judged.Residual, 0, 60);
    }

    /// <summary>Two holes tell only how far apart they are: a stretch of the thread that runs nearest to the way between them.</summary>
    [Theory]
    [InlineData(100, 20, true)]
    [InlineData(20, 100, false)]
    public void TwoHolesAreFollowedAlongTheThreadBetweenThem(int x, int y, bool isWarp)
    {
        ImmutableArray<Vector> two = [new(70_000, 30_000), new(70_000 + (x * 1000), 30_000 + (y * 1000))];
        var judged = Of(two, at => (at - two[0]) * 0.03);
        Assert.Equal(Verdict.Stretched, judged.Verdict);
        Assert.Equal(isWarp, judged.Stretch.Warp < -0.02);
        Assert.Equal(!isWarp, judged.Stretch.Weft < -0.02);
    }

    /// <summary>
    /// Two holes and an edge are five figures, of which a move takes three and a stretch both ways the rest: nothing is left
    /// to test it by, and none is taken for granted.
    /// </summary>
    [Fact]
    public void WhatNothingIsLeftToTestByIsNotFollowed()
    {
        var judged = Judged([
            new Sighting(new(70_000, 30_000), 0, new(-3000, -1500)) { Name = "A1" },
            new Sighting(new(170_000, 130_000), 0, new(3000, 1500)) { Name = "A2" },
            new Sighting(new(170_000, 30_000), 0, new(-4000, 0)) { Name = "1", Across = new Vector(1, 0) },
        ]);
        Assert.Equal(Verdict.Contradictory, judged.Verdict);
        Assert.Equal((0, 0), (judged.Stretch.Warp, judged.Stretch.Weft));
    }

    /// <summary>Two opposite corners out, two in: no move and no stretch does that.</summary>
    [Fact]
    public void OffsetsThatDoNotGoTogetherContradictEachOther() =>
        Assert.Equal(
            Verdict.Contradictory,
            Of(Square, at => (at - Middle) * (at.X > Middle.X == at.Y > Middle.Y ? 0.04 : -0.04)).Verdict
        );

    /// <summary>Warp at 30 degrees, longer by a hundredth; weft shorter by two.</summary>
    [Fact]
    public void AStretchLeavesItsPlaceAndGoesByThread()
    {
        var stretch = new GrainStretch(30, 0.01, -0.02, Middle);
        var (warp, weft) = (new Vector(Math.Sqrt(3) / 2, 0.5), new Vector(-0.5, Math.Sqrt(3) / 2));
        Same(Middle, stretch.Of(Middle));
        Same(Middle + (warp * 10_100), stretch.Of(Middle + (warp * 10_000)));
        Same(Middle + (weft * 9_800), stretch.Of(Middle + (weft * 10_000)));
    }

    private static Judgement Of(ImmutableArray<Vector> holes, Func<Vector, Vector> offset) =>
        Judged([.. holes.Select((at, i) => new Sighting(at.From(default), 0, offset(at)) { Name = $"A{i}" })]);

    private static Judgement Judged(ImmutableArray<Sighting> seen)
    {
        ImmutableArray<Corner> corners = [.. seen.Select(s => new Corner(s.Name, s.At, s.At, s.At, 0, [1]))];
        return Judgement.Of(Recipe, new PredictedFit(Recipe, 2, corners), 1, seen);
    }

    private static void Same(Vector expected, Vector found) => Assert.InRange((expected - found).Length, 0, 1);
}
