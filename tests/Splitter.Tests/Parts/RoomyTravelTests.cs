using System.Collections.Immutable;
using CsCheck;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Tests.Parts;

/// <summary>Hidden thread makes room where there are too many layers; what shows stays as it is.</summary>
public sealed class RoomyTravelTests
{
    private const int Most = 3;

    private static readonly Box Ground = new(-20_000, -20_000, 20_000, 20_000);

    /// <summary>Half of the width of the rows that hide thread, µm: a tip too narrow for cells of half a millimetre.</summary>
    private const int Half = 700;

    /// <summary>Hidden thread along a tip, and squares that are full.</summary>
    private static readonly Gen<(Block Block, ImmutableArray<Square> Full)> Works = Gen.Select(
        Gen.Select(Gen.Int[-120, 120], Gen.Int[-3, 3], Gen.Int[0, 9]).Array[2, 12],
        Gen.Select(Gen.Int[-12, 12], Gen.Int[-2, 1]).Array[0, 12],
        (path, full) =>
            (
                new Block(
                    "path",
                    StitchRules.Split(
                        StitchRules.Thinned(
                            path.Select(p => new Stitch(new(p.Item1 * 100, p.Item2 * 100), Use(p.Item3)))
                        ),
                        Ties.HiddenStitch
                    )
                ),
                full.Select(s => new Square(2 * s.Item1, 2 * s.Item2)).Distinct().ToImmutableArray()
            )
    );

    [Fact]
    public void LayersTooManyAreFewerAndNowhereMoreThanTheMostWere() =>
        Works.Holds(work =>
        {
            var (before, after) = (Cloth(work.Block, work.Full), Cloth(Moved(work.Block, work.Full), work.Full));
            Assert.True(TooMany(after) <= TooMany(before) + 0.001);
            Assert.True(
                after.Squares.Max(after.LayersOn) <= Math.Max(Most, before.Squares.Max(before.LayersOn)) + 0.001
            );
        });

    [Fact]
    public void WhatShowsStays() =>
        Works.Holds(work =>
        {
            var moved = Moved(work.Block, work.Full);
            Assert.Equal(Shown(work.Block), Shown(moved));
            Assert.Equal((work.Block.Start, work.Block.End), (moved.Start, moved.End));
        });

    [Fact]
    public void NewHolesLieBelowTheRowsAStitchApart() =>
        Works.Holds(work =>
        {
            var (before, after) = (work.Block.Stitches, Moved(work.Block, work.Full).Stitches);
            foreach (var (from, to) in after.Zip(after.Skip(1)).Where(pair => !before.Contains(pair.Second)))
            {
                Assert.Equal(to.At, to.At.OnTape());
                // A row covers as much as lies between rows; the thread keeps its own width inside of it.
                Assert.InRange(to.At.Y, -Half, Half);
                Assert.InRange(from.At.DistanceTo(to.At), StitchRules.Shortest, Ties.HiddenStitch);
            }
        });

    [Fact]
    public void WhereNothingHidesItOrThereIsRoomItStays() =>
        Works.Holds(work =>
        {
            if (TooMany(Cloth(work.Block, [])) == 0)
                Assert.Equal(work.Block.Stitches, Moved(work.Block, []).Stitches);
            Block[] bare = [work.Block];
            var cloth = Cloth(work.Block, work.Full);
            Move(bare, cloth);
            // Nothing but holes left out, where the thread then lies within a tenth of a millimetre of its way.
            Assert.All(bare[0].Stitches, s => Assert.Contains(s.At, work.Block.Stitches.Select(old => old.At)));
        });

    /// <summary>The full square is one half of the tip: the thread goes to the other half.</summary>
    [Fact]
    public void ItGoesAroundAFullMillimetreInANarrowTip()
    {
        ImmutableArray<Square> full = [new(0, 0)];
        var block = new Block("path", [Travel(-2000, -100), Travel(500, 300), Travel(3000, -100)]);
        Assert.True(Over(block, full[0]) > 900);
        Assert.Equal(0, Over(Moved(block, full), full[0]));
    }

    /// <summary>They hold the thread by being short.</summary>
    [Fact]
    public void ShortStitchesThatAreATieStay()
    {
        ImmutableArray<Square> full = [new(0, 0)];
        var block = ShortTie.AtStart(Ties.Fasten("path", [Travel(-900, 300), Travel(4000, 300)])!)!;
        Assert.Equal(Tie(block), Tie(Moved(block, full)));
        Assert.NotEqual(Tie(block), Tie(Moved(block with { IsShortTied = default }, full)));

        static List<Point> Tie(Block of) => [.. of.Stitches.Take(ShortTie.Count + 1).Select(s => s.At)];
    }

    [Fact]
    public void NoHolesAreMadeWhereTheyAreCrowded() =>
        Works.Holds(work =>
        {
            var cloth = Cloth(work.Block, work.Full);
            foreach (var square in work.Full.SelectMany(s => s.Around.Append(s)).Distinct())
                for (var i = 0; i < ThreadGrid.Crowded; i++)
                    cloth.Pierce(square.Middle);
            foreach (var stitch in work.Block.Stitches)
                cloth.Pierce(stitch.At);
            var before = cloth.Squares.ToDictionary(s => s, cloth.HolesIn);
            Block[] blocks = [work.Block, Cover()];
            Move(blocks, cloth);
            Assert.All(
                cloth.Squares,
                s => Assert.InRange(cloth.HolesIn(s), 0, Math.Max(ThreadGrid.Crowded, before.GetValueOrDefault(s)))
            );
            // Each lies in four squares.
            Assert.Equal(
                before.Values.Sum() - (4 * work.Block.Stitches.Length),
                cloth.Squares.Sum(cloth.HolesIn) - (4 * blocks[0].Stitches.Length)
            );
        });

    private static StitchUse Use(int number) =>
        number switch
        {
            0 => StitchUse.Run,
            < 5 => StitchUse.Underlay,
            _ => StitchUse.Travel,
        };

    private static Stitch Travel(int x, int y) => new(new(x, y), StitchUse.Travel);

    private static IEnumerable<Stitch> Shown(Block block) => block.Stitches.Where(s => s.Use == StitchUse.Run);

    private static double Over(Block block, Square square) =>
        block
            .Stitches.Zip(block.Stitches.Skip(1))
            .Sum(pair =>
            {
                var length = 0.0;
                foreach (var (crossed, along) in new CrossedQuarters(pair.First.At, pair.Second.At))
                    length += square.Quarters.Contains(crossed) ? along : 0;
                return length;
            });

    private static Block Moved(Block block, ImmutableArray<Square> full)
    {
        var cloth = Cloth(block, full);
        Block[] blocks = [block, Cover()];
        Move(blocks, cloth);
        return blocks[0];
    }

    private static void Move(Block[] blocks, ThreadGrid cloth)
    {
        var crowded = new CrowdedSquares(cloth, cloth, Most);
        new RoomyTravel(crowded, cloth, cloth, Most).Move(blocks, crowded.CoverOf(blocks));
    }

    private static double TooMany(ThreadGrid cloth) => cloth.Squares.Sum(s => Math.Max(0, cloth.LayersOn(s) - Most));

    /// <summary>The block, and as much below it on some squares as they bear.</summary>
    private static ThreadGrid Cloth(Block block, ImmutableArray<Square> full)
    {
        var grid = new ThreadGrid(Ground);
        foreach (var square in full)
            // Thread that lies inside the square alone.
            while (grid.LayersOn(square) < Most)
                grid.Lay(
                    new(square.Middle.X - 250, square.Middle.Y),
                    new(square.Middle.X + 250, square.Middle.Y),
                    ThreadGrid.ThreadWidth
                );
        grid.Lay([.. block.Stitches.Select(s => s.At)], ThreadGrid.ThreadWidth);
        return grid;
    }

    /// <summary>Rows across the tip.</summary>
    private static Block Cover() =>
        new(
            "cover",
            [
                .. from i in Enumerable.Range(-45, 91)
                from y in i % 2 == 0 ? new[] { -Half, Half } : [Half, -Half]
                select new Stitch(new(i * 400, y), StitchUse.Fill),
            ]
        );
}
