using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Tests.Parts;

/// <summary>
/// Rows from x = 0 to 12 mm, and over them from x = 8 mm on others that are sewn later; between 10 and 14 mm two layers
/// more make four.
/// </summary>
public sealed class RowEndsTests
{
    private const int Most = 3;

    [Fact]
    public void WhatIsHiddenAndTooManyIsLeftOut()
    {
        var (rows, cover, layers) = (Rows(0, 12), Rows(8, 20), Layers(more: 2));
        var before = Excess(layers);
        var after = Shortened([rows, cover], layers);
        Assert.InRange(Excess(layers), 0, before / 4);
        Assert.Equal(cover.Stitches, after[1].Stitches);
        Assert.All(InsideEnds(after[0]), end => Assert.InRange(end, 9_000, 11_000));
        // Along the edges of what is sewn over them nothing is hidden.
        Assert.Equal(12_000, after[0].Stitches.Where(s => s.At.Y == 0).Max(s => s.At.X));
    }

    [Fact]
    public void WhatBearsAllLayersStaysAsItIs()
    {
        var rows = Rows(0, 12);
        Assert.Equal(rows.Stitches, Shortened([rows, Rows(8, 20)], Layers(more: 0))[0].Stitches);
    }

    /// <summary>Open rows hide nothing, nor do those that were sewn before.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void WhatShowsStaysAsItIs(bool isSewnLater)
    {
        var (rows, other) = (Rows(0, 12), Rows(8, 20, isSewnLater ? 2000 : 400));
        Block[] blocks = isSewnLater ? [rows, other] : [other, rows];
        Assert.Equal(rows.Stitches, Shortened(blocks, Layers(more: 2))[isSewnLater ? 0 : 1].Stitches);
    }

    /// <summary>Another part hides it too, further inside its edge, since it may lie a little off.</summary>
    [Fact]
    public void ALaterPartHidesIt()
    {
        var (rows, layers) = (Rows(0, 12), Layers(more: 2));
        var (own, later) = (new[] { rows }, new[] { Rows(8, 20) });
        RowEnds.Shorten([(own, new(own)), (later, new(later))], 0, [], layers, Most);
        Assert.All(InsideEnds(own[0]), end => Assert.InRange(end, 9_000, 11_000));
        (own, later) = ([rows], [Rows(8, 20)]);
        RowEnds.Shorten([(later, new(later)), (own, new(own))], 1, [], Layers(more: 2), Most);
        Assert.Equal(rows.Stitches, own[0].Stitches);
    }

    /// <summary>A cross of another part is held against where rows end: near it they do as they did.</summary>
    [Theory]
    [InlineData("rows", 0, true)]
    [InlineData("rows", 1, false)]
    [InlineData("others", 0, false)]
    public void WhatACrossShouldMeetStaysAsItIs(string on, int with, bool isKept)
    {
        var rows = Rows(0, 12);
        Block[] blocks = [rows, Rows(8, 20)];
        RowEnds.Shorten([(blocks, new(blocks))], 0, [new(new(12_000, 9_000), with, on)], Layers(more: 2), Most);
        var beside = blocks[0].Stitches.Where(s => s.At.Y is > 8_000 and < 9_000).GroupBy(s => s.At.Y);
        Assert.All(beside, row => Assert.Equal(isKept, row.Max(s => s.At.X) == 12_000));
        Assert.NotEqual(rows.Stitches, blocks[0].Stitches);
    }

    /// <summary>
    /// Of two rows that follow each other on the right, at 4.0 and 4.4 mm, one lies 5.2 mm from the cross and the other 4.8:
    /// nearer than 5 mm both stay, the one that ends as the one that begins.
    /// </summary>
    [Fact]
    public void NorDoesTheRowThatBeginsNearIt()
    {
        Block[] blocks = [Rows(0, 12), Rows(8, 20)];
        RowEnds.Shorten([(blocks, new(blocks))], 0, [new(new(12_000, 9_200), 0, "rows")], Layers(more: 2), Most);
        Assert.Equal(12_000, blocks[0].Stitches.Where(s => s.At.Y == 4_400).Max(s => s.At.X));
        Assert.True(blocks[0].Stitches.Where(s => s.At.Y == 3_600).Max(s => s.At.X) < 12_000);
    }

    private static Block[] Shortened(Block[] blocks, ThreadGrid layers)
    {
        blocks = [.. blocks];
        RowEnds.Shorten([(blocks, new(blocks))], 0, [], layers, Most);
        return blocks;
    }

    /// <summary>Where rows end on the right, µm, that lie well inside.</summary>
    private static IEnumerable<int> InsideEnds(Block block) =>
        block
            .Stitches.Where(s => s.At.Y is > 1_000 and < 9_000)
            .GroupBy(s => s.At.Y)
            .Select(row => row.Max(s => s.At.X));

    private static ThreadGrid Layers(int more)
    {
        var layers = new ThreadGrid(new Box(0, 0, 20_000, 10_000));
        foreach (var block in (Block[])[Rows(0, 12), Rows(8, 20), .. Enumerable.Repeat(Rows(10, 14), more)])
            for (var i = 1; i < block.Stitches.Length; i++)
                layers.Lay(block.Stitches[i - 1].At, block.Stitches[i].At, ThreadGrid.ThreadWidth);
        return layers;
    }

    private static double Excess(ThreadGrid layers) => layers.Squares.Sum(s => Math.Max(0, layers.LayersOn(s) - Most));

    /// <summary>Rows to and fro between two places, mm, 10 mm high, with a hole every 2 mm.</summary>
    private static Block Rows(int left, int right, int spacing = 400)
    {
        var stitches = ImmutableArray.CreateBuilder<Stitch>();
        for (var y = 0; y <= 10_000; y += spacing)
        {
            var row = Enumerable.Range(0, ((right - left) / 2) + 1).Select(i => new Point((left + (2 * i)) * 1000, y));
            stitches.AddRange((y / spacing % 2 == 0 ? row : row.Reverse()).Select(p => new Stitch(p, StitchUse.Fill)));
        }
        return new("rows", stitches.ToImmutable());
    }
}
