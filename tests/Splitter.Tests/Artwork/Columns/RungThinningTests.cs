using Splitter.Artwork;
using Splitter.Artwork.Columns;

namespace Splitter.Tests.Artwork.Columns;

public sealed class RungThinningTests
{
    /// <summary>
    /// A straight ribbon needs its ends alone; of a very long one some more are kept, so that no rung is looked at more than
    /// two thousand times. By hand: 10,000 rungs without the ends are four times 2,001 and a rest.
    /// </summary>
    [Theory]
    [InlineData(2, 2)]
    [InlineData(2_002, 2)]
    [InlineData(2_003, 3)]
    [InlineData(10_000, 6)]
    public void OfAStraightRibbonFewRungsAreKept(int rungs, int kept) =>
        Assert.Equal(
            kept,
            RungThinning.Kept(Enumerable.Range(0, rungs).Select(i => (100.0 * i, Across(i, 0)))).Count()
        );

    /// <summary>By hand: a bend of 10 µm does not show, one of 11 does; its two ends are as straight as before.</summary>
    [Theory]
    [InlineData(10, 2)]
    [InlineData(11, 3)]
    public void WhatStandsAsideIsKept(int aside, int kept) =>
        Assert.Equal(
            kept,
            RungThinning.Kept([(0, Across(0, 0)), (100, Across(1, aside)), (200, Across(2, 0))]).Count()
        );

    private static Rung Across(int place, int aside) => new(new(100 * place, aside), new(100 * place, 500 + aside));
}
