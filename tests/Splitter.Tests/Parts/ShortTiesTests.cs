using System.Collections.Immutable;
using CsCheck;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Tests.Parts;

/// <summary>Where a tie is too much, the path's own stitches are short instead.</summary>
public sealed class ShortTiesTests
{
    private const int Most = 3;

    private static readonly Gen<Block[]> Works = Gen.Select(Gen.Int[-80, 80], Gen.Int[-80, 80])
        .Array[2, 8]
        .Select(path =>
            Ties.Fasten("path", path.Select(p => new Stitch(new(p.Item1 * 100, p.Item2 * 100), StitchUse.Run)))
            ?? Ties.Fasten("path", [new(default, StitchUse.Run), new(new(5000, 0), StitchUse.Run)])!
        )
        .Array[1, 4];

    [Fact]
    public void OnFullClothAPathIsSewnAsItIsWithShortStitchesAtItsEnds()
    {
        var block = Ties.Fasten("path", [new(default, StitchUse.Run), new(new(9000, 0), StitchUse.Run)])!;
        Assert.Equal(
            [0, 500, 1000, 1500, 2000, 7000, 7500, 8000, 8500, 9000],
            Assert.Single(Shortened([block], layers: Most)).Stitches.Select(s => s.At.X)
        );
        Assert.Same(block, Assert.Single(Shortened([block], layers: 0)));
    }

    /// <summary>What a stitch is for stays, also where it is divided.</summary>
    [Fact]
    public void EachStitchIsForWhatItWas()
    {
        Stitch[] path =
        [
            new(default, StitchUse.Underlay),
            new(new(3000, 0), StitchUse.Underlay),
            new(new(3000, 1200), StitchUse.Satin),
            new(new(3400, 0), StitchUse.Satin),
        ];
        var tied = Assert.Single(Shortened([Ties.Fasten("path", path)!], layers: Most)).Stitches;
        Assert.All(tied.Skip(1).TakeWhile(s => s.At.Y == 0), s => Assert.Equal(StitchUse.Underlay, s.Use));
        Assert.All(tied.SkipWhile(s => s.At.Y == 0), s => Assert.Equal(StitchUse.Satin, s.Use));
    }

    [Fact]
    public void ThePathStaysItsEndsAreFastenedAndNothingIsTrimmedMore() =>
        Works.Holds(blocks =>
        {
            var tied = Shortened(blocks, Most);
            foreach (var (before, after) in blocks.Zip(tied))
            {
                var path = before.Stitches[3..^3].Select(s => s.At);
                var sewn = after.Stitches.Select(s => s.At).ToList();
                Assert.All(sewn, p => Assert.Equal(p, p.OnTape()));
                Assert.True(IsAmong(path, sewn));
                AssertFastened(after.Stitches);
                AssertFastened([.. after.Stitches.Reverse()]);
            }
            for (var i = 1; i < blocks.Length; i++)
                Assert.True(
                    JumpOrder.IsTrimmed(blocks[i - 1].End, blocks[i].Start)
                        || !JumpOrder.IsTrimmed(tied[i - 1].End, tied[i].Start)
                );
        });

    [Fact]
    public void NowhereAreMoreHolesMadeThanClothBears() =>
        Works.Holds(blocks =>
        {
            var (cloth, full) = (Cloth(blocks, Most), new Square(0, 0));
            while (cloth.HolesIn(full) < ThreadGrid.MostHoles)
                cloth.Pierce(full.Middle);
            var before = cloth.HolesIn(full);
            new ShortTies(cloth, cloth, Most).Shorten([.. blocks]);
            Assert.InRange(cloth.HolesIn(full), 0, before);
        });

    /// <summary>So that what comes after leaves them as they are.</summary>
    [Fact]
    public void ABlockKnowsWhichOfItsStitchesAreATie() =>
        Works.Holds(blocks =>
            Assert.All(
                Shortened(blocks, Most).Zip(blocks),
                pair =>
                {
                    var (now, before) = pair;
                    var (first, end) = ShortTie.Rest(now);
                    Assert.Equal((Ties.IsTiedAtStart(now) ? 0 : ShortTie.Count), first);
                    Assert.Equal(
                        Math.Max(first, now.Stitches.Length - (Ties.IsTiedAtEnd(now) ? 0 : ShortTie.Count)),
                        end
                    );
                    Assert.Equal((0, before.Stitches.Length), ShortTie.Rest(before));
                }
            )
        );

    /// <summary>What is counted is what lies there afterwards.</summary>
    [Fact]
    public void TheClothIsCountedAsItIsSewn() =>
        Works.Holds(blocks =>
        {
            var cloth = Cloth(blocks, Most);
            Block[] tied = [.. blocks];
            new ShortTies(cloth, cloth, Most).Shorten(tied);
            var again = Cloth(blocks, Most);
            for (var i = 0; i < blocks.Length; i++)
            {
                ClothLayers.Lay(again, blocks[i], -1);
                ClothLayers.Lay(again, tied[i], 1);
            }
            Assert.All(cloth.Squares, square => Assert.Equal(again.ThreadOn(square), cloth.ThreadOn(square)));
        });

    /// <summary>The first stitches are no longer than a tie's with what is left of a stitch.</summary>
    private static void AssertFastened(ImmutableArray<Stitch> stitches) =>
        Assert.All(
            stitches.Zip(stitches.Skip(1)).Take(3),
            s => Assert.InRange(s.First.At.DistanceTo(s.Second.At), 300, 1100)
        );

    /// <summary>All of these places come in this order among others.</summary>
    private static bool IsAmong(IEnumerable<Point> places, List<Point> others)
    {
        var from = 0;
        return places.All(place => (from = others.IndexOf(place, from) + 1) > 0);
    }

    private static Block[] Shortened(Block[] blocks, double layers)
    {
        var cloth = Cloth(blocks, layers);
        Block[] tied = [.. blocks];
        new ShortTies(cloth, cloth, Most).Shorten(tied);
        return tied;
    }

    /// <summary>The blocks, and so many layers more on all of the cloth.</summary>
    private static ThreadGrid Cloth(Block[] blocks, double layers)
    {
        var grid = new ThreadGrid(new(-12_000, -12_000, 12_000, 12_000));
        for (var row = -10; row <= 10; row++)
        for (var column = -10; column <= 10; column++)
        {
            var square = new Square(2 * column, 2 * row);
            while (grid.LayersOn(square) < layers)
                grid.Lay(new(square.Middle.X - 250, square.Middle.Y), new(square.Middle.X + 250, square.Middle.Y), 400);
        }
        foreach (var stitches in blocks.Select(b => b.Stitches))
        {
            foreach (var (from, to) in stitches.Zip(stitches.Skip(1)))
                grid.Lay(from.At, to.At, ThreadGrid.ThreadWidth);
            foreach (var stitch in stitches)
                grid.Pierce(stitch.At);
        }
        return grid;
    }
}
