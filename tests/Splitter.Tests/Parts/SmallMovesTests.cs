using System.Collections.Immutable;
using CsCheck;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Tests.Parts;

/// <summary>Where thread still lies too thick holes move by what does not show, and columns end short in a point.</summary>
public sealed class SmallMovesTests
{
    private const int Most = 3;

    private static readonly Box Ground = new(-20_000, -20_000, 20_000, 20_000);

    private static readonly Gen<StitchUse> Uses = Gen.OneOf(
        Gen.Const(StitchUse.Fill),
        Gen.Const(StitchUse.Satin),
        Gen.Const(StitchUse.Travel),
        Gen.Const(StitchUse.Run),
        Gen.Const(StitchUse.Tie)
    );

    /// <summary>Paths in a few square millimetres, on cloth that bears little more or nothing.</summary>
    private static readonly Gen<(Block Block, double Layers)> Works = Gen.Select(
        Gen.Select(Gen.Int[-30, 30], Gen.Int[-30, 30], Uses).Array[4, 40],
        Gen.Double[1, 3],
        (path, layers) =>
            (
                new Block(
                    "path",
                    [.. StitchRules.Thinned(path.Select(p => new Stitch(new(p.Item1 * 100, p.Item2 * 100), p.Item3)))]
                ),
                layers
            )
    );

    [Fact]
    public void ARowEndsAStepEarlierAndNoMoreThanThat()
    {
        var rows = new Block(
            "rows",
            [
                new(new(-3000, 300), StitchUse.Fill),
                new(new(700, 300), StitchUse.Fill),
                new(new(700, 700), StitchUse.Fill),
                new(new(-3000, 700), StitchUse.Fill),
            ]
        );
        Assert.Equal([-3000, 600, 600, -3000], Moved(rows, layers: 2.4).Stitches.Select(s => s.At.X));
        Assert.Equal(rows.Stitches, Moved(rows, layers: 1).Stitches);
    }

    [Fact]
    public void ALineGoesAStepAsideAndNoMoreThanThat()
    {
        var line = new Block(
            "line",
            [.. Enumerable.Range(-3, 8).Select(i => new Stitch(new(i * 500, 100), StitchUse.Run))]
        );
        var moved = Moved(line, layers: 2.8);
        Assert.True(TooMany(Cloth(moved, 2.8)) < TooMany(Cloth(line, 2.8)));
        Assert.All(moved.Stitches.Select(s => s.At.Y), y => Assert.InRange(y, 0, 100));
        Assert.Equal(line.Stitches, Moved(line, layers: 1).Stitches);
        // Nor away from where a cross of a later part meets it.
        Block[] met = [line];
        Move(met, Cloth(line, 2.8), Most, Most, new(), new Point(500, 900));
        Assert.Equal(line, met[0]);
    }

    /// <summary>On the edge that it turns about stitches end earlier, as many as those beside them cover.</summary>
    [Fact]
    public void AColumnThatTurnsInAPointEndsShortOfIt()
    {
        var column = new Block(
            "column",
            [
                .. Enumerable
                    .Range(0, 24)
                    .SelectMany(i =>
                        (Stitch[])
                            [
                                new(new(400, -100 + (50 * i / 100 * 100)), StitchUse.Satin),
                                new(new(1600, -4000 + (400 * i)), StitchUse.Satin),
                            ]
                    ),
            ]
        );
        var moved = Moved(column, layers: 3);
        var kept = moved.Stitches.Where((s, i) => i % 2 == 0 && s.At.DistanceTo(column.Stitches[i].At) <= 100).ToList();
        Assert.InRange(kept.Count, 4, 12);
        Assert.All(kept.Zip(kept.Skip(1)), pair => Assert.InRange(pair.First.At.DistanceTo(pair.Second.At), 0, 700));
        Assert.True(TooMany(Cloth(moved, 3)) < TooMany(Cloth(column, 3)));
    }

    [Fact]
    public void LayersTooManyAreFewerAndOnNoOtherSquare() =>
        Works.Holds(work =>
        {
            var (before, after) = (Cloth(work.Block, work.Layers), Cloth(Moved(work.Block, work.Layers), work.Layers));
            Assert.True(TooMany(after) <= TooMany(before));
            Assert.All(Full(after), square => Assert.Contains(square, Full(before)));
        });

    [Fact]
    public void HolesMoveNoFurtherThanAStepButForThoseOfColumns() =>
        Works.Holds(work =>
        {
            var moved = Moved(work.Block, work.Layers).Stitches;
            Assert.Equal(work.Block.Stitches.Select(s => s.Use), moved.Select(s => s.Use));
            for (var i = 0; i < moved.Length; i++)
            {
                var (away, use) = (work.Block.Stitches[i].At.DistanceTo(moved[i].At), moved[i].Use);
                var isFixed = i == 0 || i == moved.Length - 1 || IsFixed(use) || IsFixed(moved[i + 1].Use);
                Assert.InRange(
                    away,
                    0,
                    isFixed ? 0
                        : use == StitchUse.Satin ? StitchRules.Longest
                        : Relief.ShownMove
                );
                if (i > 0)
                    Assert.True(moved[i - 1].At.DistanceTo(moved[i].At) >= StitchRules.Shortest);
            }
        });

    [Fact]
    public void NowhereAreMoreHolesMadeThanClothBears() =>
        Works.Holds(work =>
        {
            var cloth = Cloth(work.Block, work.Layers);
            var beside = new Square(-2, 0);
            while (cloth.HolesIn(beside) < ThreadGrid.MostHoles)
                cloth.Pierce(beside.Middle);
            var before = cloth.HolesIn(beside);
            Moved(work.Block, cloth);
            Assert.InRange(cloth.HolesIn(beside), 0, before);
        });

    /// <summary>What is counted is what lies there afterwards.</summary>
    [Fact]
    public void TheClothIsCountedAsItIsSewn() =>
        Works.Holds(work =>
        {
            var cloth = Cloth(work.Block, work.Layers);
            var again = Cloth(Moved(work.Block, cloth), work.Layers);
            Assert.All(
                cloth.Squares,
                s => Assert.Equal((again.ThreadOn(s), again.HolesIn(s)), (cloth.ThreadOn(s), cloth.HolesIn(s)))
            );
        });

    [Fact]
    public void NoHoleThatShowsMovesTwice() =>
        Works.Holds(work =>
        {
            var cloth = Cloth(work.Block, work.Layers);
            var (blocks, moved) = (new[] { work.Block }, new MovedHoles());
            Move(blocks, cloth, Most, Most, moved);
            var once = blocks[0];
            Move(blocks, cloth, Most - 0.5, Most, moved);
            Assert.All(
                work.Block.Stitches.Zip(once.Stitches, blocks[0].Stitches),
                holes =>
                    Assert.True(
                        holes.First.At == holes.Second.At
                            || holes.Second.At == holes.Third.At
                            || holes.First.Use == StitchUse.Satin
                    )
            );
        });

    /// <summary>Where fewer layers are wished for than cloth bears.</summary>
    [Fact]
    public void NoSquareComesToHaveMoreThanClothBears() =>
        Works.Holds(work =>
        {
            var cloth = Cloth(work.Block, work.Layers);
            var before = Full(cloth);
            Move([work.Block], cloth, Most - 0.8, Most, new());
            Assert.All(Full(cloth), square => Assert.Contains(square, before));
        });

    /// <summary>More than a step: below rows nobody sees it.</summary>
    [Fact]
    public void WhatLaterStitchesHideMovesAsFarAsItNeedsTo()
    {
        ImmutableArray<Block> work = [Across(StitchUse.Travel), Rows(30)];
        var cloth = Cloth(work, 1.85);
        Assert.NotEmpty(Full(cloth));
        var moved = MovedHidden(work, cloth);
        Assert.InRange(moved[0].Stitches[2].At.DistanceTo(work[0].Stitches[2].At), 2 * Relief.ShownMove, 1000);
        Assert.Empty(Full(cloth));
        Assert.Equal(work[1], moved[1]);
    }

    /// <summary>The rows end where the travel lies: beyond it nothing hides it.</summary>
    [Fact]
    public void WhatWouldShowStaysWhereItIs()
    {
        ImmutableArray<Block> work = [Across(StitchUse.Travel), Rows(13)];
        var cloth = Cloth(work, 1.85);
        Assert.NotEmpty(Full(cloth));
        Assert.Equal(work[0], MovedHidden(work, cloth)[0]);
    }

    /// <summary>They hold the thread by being short.</summary>
    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void ShortStitchesThatAreATieStayBelowRowsToo(bool start, bool end)
    {
        ImmutableArray<Block> work = [Across(StitchUse.Travel) with { IsShortTied = (start, end) }, Rows(30)];
        Assert.Equal(work[0], MovedHidden(work, Cloth(work, 1.85))[0]);
    }

    /// <summary>A row that later ones lie over moves like travel; one that covers the cloth alone stays.</summary>
    [Fact]
    public void ARowMovesWhereTheClothIsCoveredWithoutIt()
    {
        ImmutableArray<Block> work = [Across(StitchUse.Fill), Rows(30)];
        Assert.NotEqual(work[0].Stitches, MovedHidden(work, Cloth(work, 1.85))[0].Stitches);
        // A cross of a later part is held against it.
        Assert.Equal(work[0], MovedHidden(work, Cloth(work, 1.85), new Point(500, 900))[0]);
        work = [work[0]];
        var cloth = Cloth(work, 2.85);
        Assert.NotEmpty(Full(cloth));
        Assert.Equal(work[0], MovedHidden(work, cloth)[0]);
    }

    [Fact]
    public void WhereHiddenHolesArePutLaterStitchesHideThem() =>
        Works.Holds(works =>
        {
            ImmutableArray<Block> work = [works.Block, Rows(30)];
            var cloth = Cloth(work, works.Layers);
            var cover = new CrowdedSquares(cloth, cloth, Most).CoverOf(work);
            var moved = MovedHidden(work, cloth)[0].Stitches;
            for (var i = 0; i < moved.Length; i++)
                if (moved[i].At != works.Block.Stitches[i].At)
                    Assert.True(cover.IsHidden(moved[i].At, i + 2));
        });

    /// <summary>However often holes move: what shows of a stitch stays within a quarter of a thread's width.</summary>
    [Fact]
    public void WhatNothingHidesStaysAboutWhereItWas() =>
        Works.Holds(works =>
        {
            // They end about where the thread lies.
            ImmutableArray<Block> work = [works.Block, Rows(13)];
            var cloth = Cloth(work, works.Layers);
            var cover = new CrowdedSquares(cloth, cloth, Most).CoverOf(work);
            var (old, moved) = (works.Block.Stitches, MovedHidden(work, cloth)[0].Stitches);
            for (var i = 1; i < moved.Length; i++)
            for (var k = 0; k <= 10; k++)
                if (moved[i - 1].At.Towards(moved[i].At, k / 10.0) is var at && !cover.IsHidden(at, i + 1))
                    Assert.InRange(
                        old.Zip(old.Skip(1)).Min(s => Polygons.Distance(s.First.At, s.Second.At, at, at)),
                        0,
                        Relief.ShownMove + 1
                    );
        });

    /// <summary>From the left to the right through the lower half of the square.</summary>
    private static Block Across(StitchUse use) =>
        new("across", [.. Enumerable.Range(-2, 5).Select(i => new Stitch(new(500 + (i * 1000), 900), use))]);

    /// <summary>So many rows from the top.</summary>
    private static Block Rows(int count) =>
        new(
            "rows",
            [
                .. Enumerable
                    .Range(0, 2 * count)
                    .Select(i => new Stitch(
                        new((i + 1) / 2 % 2 == 0 ? -3000 : 4000, -4000 + (i / 2 * 400)),
                        StitchUse.Fill
                    )),
            ]
        );

    private static bool IsFixed(StitchUse use) => use == StitchUse.Tie;

    private static Block Moved(Block block, double layers) => Moved(block, Cloth(block, layers));

    private static Block Moved(Block block, ThreadGrid cloth)
    {
        Block[] blocks = [block];
        Move(blocks, cloth, Most, Most, new());
        return blocks[0];
    }

    private static void Move(
        Block[] blocks,
        ThreadGrid cloth,
        double most,
        double limit,
        MovedHoles moved,
        params Point[] crosses
    )
    {
        var moves = new SmallMoves(cloth, cloth, most, limit);
        foreach (var round in SmallMoves.Rounds)
            moves.Move(blocks, round, moved, crosses);
    }

    /// <summary>The same where later stitches hide it.</summary>
    private static Block[] MovedHidden(ImmutableArray<Block> work, ThreadGrid cloth, params Point[] crosses)
    {
        Block[] blocks = [.. work];
        var (cover, moved) = (new CrowdedSquares(cloth, cloth, Most).CoverOf(blocks), new MovedHoles());
        new SmallMoves(cloth, cloth, Most, Most).MoveHidden(blocks, new(cover, moved, crosses), moved);
        return blocks;
    }

    private static ImmutableArray<Square> Full(ThreadGrid cloth) =>
        [.. cloth.Squares.Where(s => cloth.LayersOn(s) > Most)];

    private static double TooMany(ThreadGrid cloth) => Full(cloth).Sum(s => cloth.LayersOn(s) - Most);

    private static ThreadGrid Cloth(Block block, double layers) => Cloth([block], layers);

    /// <summary>The blocks, and so many layers below them on one square.</summary>
    private static ThreadGrid Cloth(ImmutableArray<Block> blocks, double layers)
    {
        var cloth = new ThreadGrid(Ground);
        var full = new Square(0, 0);
        while (cloth.LayersOn(full) < layers)
            cloth.Lay(new(full.Middle.X - 50, full.Middle.Y), new(full.Middle.X + 50, full.Middle.Y), 400);
        foreach (var block in blocks)
            ClothLayers.Lay(cloth, block, 1);
        foreach (var stitch in blocks.SelectMany(block => block.Stitches))
            cloth.Pierce(stitch.At);
        return cloth;
    }
}
