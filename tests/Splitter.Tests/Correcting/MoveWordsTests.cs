using Splitter.Correcting;

namespace Splitter.Tests.Correcting;

/// <summary>How a move and a stretch are told.</summary>
public sealed class MoveWordsTests
{
    [Theory]
    [InlineData(600, -200, "0.60 mm right and 0.20 mm down")]
    [InlineData(-600, 200, "0.60 mm left and 0.20 mm up")]
    [InlineData(0, 30, "0.03 mm up")]
    [InlineData(5, 0, "0.01 mm right")]
    [InlineData(4, -4, "0.00 mm")]
    public void AMoveIsToldWithoutNought(int right, int up, string told) => Assert.Equal(told, MoveWords.Of(right, up));

    [Theory]
    [InlineData(0.01, 0, "stretched")]
    [InlineData(0.01, 0.02, "stretched")]
    [InlineData(-0.01, 0, "drawn in")]
    [InlineData(0, -0.01, "drawn in")]
    [InlineData(-0.01, -0.02, "drawn in")]
    [InlineData(0.01, -0.01, "gone out of shape")]
    [InlineData(-0.01, 0.01, "gone out of shape")]
    [InlineData(0.01, -0.00004, "stretched")] // Rounds to nought.
    public void WhatClothHasDone(double warp, double weft, string told) =>
        Assert.Equal(told, MoveWords.Given(warp, weft));

    [Theory]
    [InlineData(0, -0.0105, "1.05 % shorter along the weft")]
    [InlineData(0.002, 0, "0.20 % longer along the warp")]
    [InlineData(0.002, -0.003, "0.20 % longer along the warp and 0.30 % shorter along the weft")]
    [InlineData(0.00004, -0.00004, "")]
    [InlineData(0.00005, 0, "0.01 % longer along the warp")] // Rounds up.
    public void AStretchIsToldByThread(double warp, double weft, string told) =>
        Assert.Equal(told, MoveWords.Shares(warp, weft));
}
