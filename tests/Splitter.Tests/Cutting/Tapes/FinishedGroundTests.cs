using Splitter.Artwork.Tapes;
using Splitter.Cutting.Tapes;
using Splitter.Geometry;

namespace Splitter.Tests.Cutting.Tapes;

/// <summary>
/// What an overlap must not cover: a field from 0 to 100 mm, over which an earlier part has sewn a line at x = 50 mm, from 0
/// to 20 mm down.
/// </summary>
public sealed class FinishedGroundTests
{
    private readonly FinishedWork finished = new(new Box(0, 0, 100_000, 100_000));

    public FinishedGroundTests() => finished.AddEarlier(At(50, 0), At(50, 20));

    [Theory]
    [InlineData(50, 0, true)]
    [InlineData(50, 20, true)]
    [InlineData(50.2, 10, true)] // A thread beside it.
    [InlineData(51, 10, false)]
    [InlineData(50, 21, false)]
    public void WorkIsFinishedWhereAnEarlierPartHasSewn(double x, double y, bool isFinished) =>
        Assert.Equal(isFinished, finished.IsAt(At(x, y)));

    [Theory]
    [InlineData(40, 10, 60, 10, true)]
    [InlineData(60, 10, 40, 10, true)]
    [InlineData(40, 25, 60, 25, false)]
    [InlineData(40, 10, 49, 10, false)]
    public void AStitchAcrossItWouldCoverIt(double x, double y, double toX, double toY, bool isUnder) =>
        Assert.Equal(isUnder, finished.IsUnder(At(x, y), At(toX, toY)));

    /// <summary>What the part sews there itself comes after its overlap.</summary>
    [Fact]
    public void WhatThePartSewsThereAgainIsNotFinished()
    {
        finished.AddOwn([Hole(45, 10), Hole(50, 10), Hole(50, 14)]);
        Assert.False(finished.IsAt(At(50, 12)));
        Assert.True(finished.IsAt(At(50, 5)));
        Assert.True(finished.IsAt(At(50, 18)));

        static KeptStitch Hole(double x, double y) => new(At(x, y), StitchKind.Run, StitchSource.Original);
    }

    /// <summary>Where the field does not reach, nothing of the part can cover anything.</summary>
    [Fact]
    public void OnlyItsOwnFieldConcernsAPart()
    {
        finished.AddEarlier(At(110, 0), At(110, 20));
        Assert.False(finished.IsAt(At(110, 10)));
        Assert.True(finished.Reaches(new Box(90_000, 0, 120_000, 10_000)));
        Assert.False(finished.Reaches(new Box(110_000, 0, 120_000, 10_000)));
    }

    private static Point At(double x, double y) => Point.FromMillimetres(x, y);
}
