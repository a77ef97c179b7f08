using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

/// <summary>
/// A sheet that no field holds, a motif on it that one does, a plate on bare cloth that one does, and a line over all:
/// what is on top, and on top of what seams cut.
/// </summary>
public sealed class CoverMapTests
{
    [Theory]
    [InlineData(10, 10, 1, 1)] // The sheet.
    [InlineData(50, 50, 2, 1)] // The motif.
    [InlineData(150, 50, 0, CoverMap.Bare)] // The plate, below which nothing is cut.
    [InlineData(125, 50, CoverMap.Bare, CoverMap.Bare)] // The line alone.
    [InlineData(125, 80, CoverMap.Bare, CoverMap.Bare)]
    [InlineData(-1, 50, CoverMap.Bare, CoverMap.Bare)]
    [InlineData(50, 101, CoverMap.Bare, CoverMap.Bare)]
    public void WhatIsOnTopAndWhatOfThatIsCut(int x, int y, int top, int cut)
    {
        var drawing = Samples.Drawing(
            Samples.Rectangle("plate", 140, 40, 20, 20),
            Samples.Rectangle("sheet", 0, 0, 120, 100),
            Samples.Rectangle("motif", 40, 40, 20, 20),
            Samples.Run("line", 0, 50, 170, 50)
        );
        var map = new CoverMap(
            drawing,
            new Wholeness(drawing, [new(0, 0, 100_000, 100_000), new(80_000, 0, 180_000, 100_000)])
        );
        Assert.Equal((top, cut), (map.Top(x * 1000, y * 1000), map.TopCut(x * 1000, y * 1000)));
    }
}
