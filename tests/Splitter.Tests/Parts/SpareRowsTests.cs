using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Tests.Parts;

/// <summary>
/// Rows from x = 0 to 12 mm, and others from x = 8 mm on; between 10 and 14 mm two layers more make four.
/// </summary>
public sealed class SpareRowsTests
{
    private const int Most = 3;

    /// <summary>As far as parts may be off, µm; rows end on the tape's grid.</summary>
    private const int Apart = 400;

    [Fact]
    public void WhatIsHiddenAndTooManyIsLeftOut()
    {
        var (rows, cover, layers) = (Rows(0, 12), Rows(8, 20, "cover"), Layers(more: 2));
        // Along the edges of what is sewn over them nothing is hidden.
        var before = Excess(layers, s => s.Row is > 0 and < 9);
        Block[] after = [rows, cover];
        LeaveOut([after], layers);
        Assert.InRange(Excess(layers, s => s.Row is > 0 and < 9), 0, before / 5);
        Assert.Equal(cover.Stitches, after[1].Stitches);
        Assert.All(InsideEnds(after[0]), end => Assert.InRange(end, 8_000 + Apart, 11_000));
        Assert.Equal(12_000, after[0].Stitches.Where(s => s.At.Y == 0).Max(s => s.At.X));
    }

    [Fact]
    public void WhatBearsAllLayersStaysAsItIs()
    {
        var rows = Rows(0, 12);
        Block[] blocks = [rows, Rows(8, 20, "cover")];
        LeaveOut([blocks], Layers(more: 0));
        Assert.Equal(rows.Stitches, blocks[0].Stitches);
    }

    /// <summary>Open rows hide nothing, nor do those that were sewn before.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void WhatShowsStaysAsItIs(bool isSewnLater)
    {
        var (rows, other) = (Rows(0, 12), Rows(8, 20, "cover", isSewnLater ? 2000 : 400));
        Block[] blocks = isSewnLater ? [rows, other] : [other, rows];
        LeaveOut([blocks], Layers(more: 2));
        Assert.Equal(rows.Stitches, blocks[isSewnLater ? 0 : 1].Stitches);
    }

    /// <summary>Another part hides it too; one that was sewn before only where it sews the same shape.</summary>
    [Theory]
    [InlineData(true, "rows", true)]
    [InlineData(true, "cover", true)]
    [InlineData(false, "rows", true)]
    [InlineData(false, "cover", false)]
    public void AnotherPartCoversTheClothToo(bool isLater, string shape, bool isLeftOut)
    {
        var (rows, layers) = (Rows(0, 12), Layers(more: 2));
        var (own, other, before) = (new[] { rows }, new[] { Rows(8, 20, shape) }, Excess(layers));
        LeaveOut(isLater ? [own, other] : [other, own], layers);
        Assert.Equal(isLeftOut, Excess(layers) < before / 2);
        Assert.Equal(isLeftOut, own[0].Stitches != rows.Stitches);
    }

    /// <summary>Each row's ends in two parts lie over each other, whichever of them ends earlier.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void WhatTwoPartsSewStillMeets(bool isFirst)
    {
        var (own, other) = (new[] { Rows(0, 12) }, new[] { Rows(8, 20) });
        LeaveOut(isFirst ? [own, other] : [other, own], Layers(more: 2));
        foreach (var row in own[0].Stitches.GroupBy(s => s.At.Y))
            Assert.InRange(
                row.Max(s => s.At.X) - other[0].Stitches.Where(s => s.At.Y == row.Key).Min(s => s.At.X),
                Apart,
                4_000
            );
    }

    /// <summary>Rows over those of an earlier part stay where they hide something of their own part.</summary>
    [Theory]
    [InlineData(StitchUse.Travel)]
    [InlineData(StitchUse.Satin)]
    internal void WhatHidesSomethingBetweenStays(StitchUse use)
    {
        Block[] earlier = [Rows(8, 20)];
        Block[] own = [Line(use, (9, 5), (11, 5)), Rows(0, 12)];
        LeaveOut([earlier, own], Layers(more: 2));
        var ends = own[1].Stitches.GroupBy(s => s.At.Y).ToDictionary(row => row.Key, row => row.Max(s => s.At.X));
        Assert.InRange(ends[5_200], 11_000, 12_000);
        Assert.InRange(ends[8_000], 8_000, 10_999);
    }

    /// <summary>Of a tip that other thread hides its rows are left out, and the ways there and back.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void WholeRowsAreLeftOutWithTheWayToThem(bool isHidden)
    {
        var tip = new Block("rows", [.. Rows(0, 6).Stitches, .. Tip(), new(new(4_000, 10_000), StitchUse.Fill)]);
        Block[] blocks = [tip, Rows(isHidden ? 2 : 14, 20, "cover")];
        var layers = Layers(more: 2, tip);
        var before = Excess(layers);
        LeaveOut([blocks], layers);
        var sewn = blocks[0].Stitches;
        Assert.Equal((tip.Start, tip.End), (sewn[0].At, sewn[^1].At));
        Assert.Equal(!isHidden, sewn.Any(s => s.At.X > 9_000));
        Assert.Equal(isHidden, Excess(layers) < before);
    }

    /// <summary>The block begins 2 mm before the end of a row: up to 2 mm beyond the turn it is tied.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void ShortStitchesThatAreATieStay(bool isTie)
    {
        var block = Rows(0, 12);
        block = block with { Stitches = block.Stitches[75..], IsShortTied = (isTie, false) };
        Block[] blocks = [block, Rows(8, 20, "cover")];
        LeaveOut([blocks], Layers(more: 2, block));
        Assert.Equal(isTie, blocks[0].Stitches.Take(5).SequenceEqual(block.Stitches.Take(5)));
        Assert.Equal(12_000, block.Stitches.Where(s => s.At.Y == 6_400).Max(s => s.At.X));
        Assert.True(blocks[0].Stitches.Where(s => s.At.Y == 6_400).Max(s => s.At.X) < 12_000);
    }

    /// <summary>A cross of another part is held against where rows end: near it they do as they did.</summary>
    [Theory]
    [InlineData("rows", 0, true)]
    [InlineData("rows", 1, false)]
    [InlineData("others", 0, false)]
    public void WhatACrossShouldMeetStaysAsItIs(string on, int with, bool isKept)
    {
        var rows = Rows(0, 12);
        Block[] blocks = [rows, Rows(8, 20, "cover")];
        LeaveOut([blocks], Layers(more: 2), new AlignmentStitch(new(12_000, 9_000), with, on));
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
        Block[] blocks = [Rows(0, 12), Rows(8, 20, "cover")];
        LeaveOut([blocks], Layers(more: 2), new AlignmentStitch(new(12_000, 9_200), 0, "rows"));
        Assert.Equal(12_000, blocks[0].Stitches.Where(s => s.At.Y == 4_400).Max(s => s.At.X));
        Assert.True(blocks[0].Stitches.Where(s => s.At.Y == 3_600).Max(s => s.At.X) < 12_000);
    }

    private static void LeaveOut(ImmutableArray<Block[]> parts, ThreadGrid layers, params AlignmentStitch[] crosses)
    {
        var rows = new SpareRows(new(parts, layers, Most), layers, Most);
        for (var part = 0; part < parts.Length; part++)
            rows.LeaveOut(parts[part], part, [.. crosses]);
    }

    /// <summary>Where rows end on the right, µm, that lie well inside.</summary>
    private static IEnumerable<int> InsideEnds(Block block) =>
        block
            .Stitches.Where(s => s.At.Y is > 1_000 and < 9_000)
            .GroupBy(s => s.At.Y)
            .Select(row => row.Max(s => s.At.X));

    private static ThreadGrid Layers(int more, params Block[] instead)
    {
        var layers = new ThreadGrid(new Box(0, 0, 20_000, 10_000));
        Block[] rows = instead.Length > 0 ? instead : [Rows(0, 12)];
        foreach (var block in (Block[])[.. rows, Rows(8, 20), .. Enumerable.Repeat(Rows(10, 14), more)])
            for (var i = 1; i < block.Stitches.Length; i++)
                layers.Lay(block.Stitches[i - 1].At, block.Stitches[i].At, ThreadGrid.ThreadWidth);
        return layers;
    }

    /// <param name="on">The squares that are asked for; null for all.</param>
    private static double Excess(ThreadGrid layers, Func<Square, bool>? on = null) =>
        layers.Squares.Where(s => on is null || on(s)).Sum(s => Math.Max(0, layers.LayersOn(s) - Most));

    /// <summary>To and from three short rows.</summary>
    private static IEnumerable<Stitch> Tip() =>
        [
            .. Line(StitchUse.Travel, (6, 9), (8, 7), (10, 5)).Stitches,
            .. Line(StitchUse.Fill, (12, 5), (12, 5.4), (10, 5.4), (10, 5.8), (12, 5.8)).Stitches,
            .. Line(StitchUse.Travel, (10, 7), (8, 8), (6, 9.4)).Stitches,
        ];

    private static Block Line(StitchUse use, params (double X, double Y)[] places) =>
        new("line", [.. places.Select(p => new Stitch(Point.FromMillimetres(p.X, p.Y), use))]);

    /// <summary>Rows to and fro between two places, mm, 10 mm high, with a hole every 2 mm.</summary>
    private static Block Rows(int left, int right, string of = "rows", int spacing = 400)
    {
        var stitches = ImmutableArray.CreateBuilder<Stitch>();
        for (var y = 0; y <= 10_000; y += spacing)
        {
            var row = Enumerable.Range(0, ((right - left) / 2) + 1).Select(i => new Point((left + (2 * i)) * 1000, y));
            stitches.AddRange((y / spacing % 2 == 0 ? row : row.Reverse()).Select(p => new Stitch(p, StitchUse.Fill)));
        }
        return new(of, stitches.ToImmutable());
    }
}
