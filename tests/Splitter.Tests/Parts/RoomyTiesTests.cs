using System.Collections.Immutable;
using CsCheck;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Tests.Parts;

/// <summary>Ties go another way where the usual one makes too many layers; what they fasten stays as it is.</summary>
public sealed class RoomyTiesTests
{
    private const int Most = 3;

    private static readonly Box Ground = new(-20_000, -20_000, 20_000, 20_000);

    /// <summary>A path anywhere, and squares that are full.</summary>
    private static readonly Gen<(Block Block, ImmutableArray<Square> Full, bool IsHidden)> Works = Gen.Select(
        Gen.Select(Gen.Int[-80, 80], Gen.Int[-80, 80]).Array[2, 12],
        Gen.Select(Gen.Int[-8, 8], Gen.Int[-8, 8]).Array[0, 120],
        Gen.Bool,
        (path, full, isHidden) =>
            (
                Ties.Fasten("path", path.Select(p => new Stitch(new(p.Item1 * 100, p.Item2 * 100), StitchUse.Run)))
                    ?? Ties.Fasten("path", [new(default, StitchUse.Run), new(new(5000, 0), StitchUse.Run)])!,
                full.Select(s => new Square(2 * s.Item1, 2 * s.Item2)).Distinct().ToImmutableArray(),
                isHidden
            )
    );

    [Fact]
    public void ThePathIsFastenedByThreeSmallStitchesAndLayersAreNoMore() =>
        Works.Holds(work =>
        {
            var tied = Retied(work.Block, work.Full, work.IsHidden);
            Assert.Equal(Path(work.Block), Path(tied));
            Assert.All(tied.Stitches[..4].Concat(tied.Stitches[^3..]), s => Assert.Equal(StitchUse.Tie, s.Use));
            foreach (var tie in new[] { Ties.AtStartOf(tied), Ties.AtEndOf(tied) })
            {
                Assert.All(tie, p => Assert.Equal(p, p.OnTape()));
                Assert.All(tie.Zip(tie.Skip(1)), s => Assert.InRange(s.First.DistanceTo(s.Second), 300, 1100));
            }
            Assert.True(TooMany(tied, work.Full) <= TooMany(work.Block, work.Full) + 0.001);
        });

    [Fact]
    public void NowhereAreMoreHolesMadeThanClothBears() =>
        Works.Holds(work =>
        {
            var cloth = Cloth(work.Block, work.Full);
            foreach (var square in work.Full)
                for (var i = 0; i < ThreadGrid.MostHoles - 1; i++)
                    cloth.Pierce(square.Middle);
            foreach (var stitch in work.Block.Stitches)
                cloth.Pierce(stitch.At);
            var before = cloth.Squares.ToDictionary(s => s, cloth.HolesIn);
            Block[] blocks = work.IsHidden ? [work.Block, Cover()] : [work.Block];
            Retie(blocks, cloth);
            Assert.All(
                cloth.Squares,
                s => Assert.InRange(cloth.HolesIn(s), 0, Math.Max(ThreadGrid.MostHoles, before.GetValueOrDefault(s)))
            );
        });

    [Fact]
    public void WhereThereIsRoomTheyStayAsTheyAre() =>
        Works.Holds(work => Assert.Equal(work.Block.Stitches, Retied(work.Block, [], work.IsHidden).Stitches));

    /// <summary>The second millimetre is full: the tie stays before it, or, where rows hide it, lies aside.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void AFullMillimetreIsHardlyCrossed(bool isHidden)
    {
        var block = Ties.Fasten("path", [new(new(500, 500), StitchUse.Run), new(new(9500, 500), StitchUse.Run)])!;
        var tied = Retied(block, [new(2, 0)], isHidden);
        Assert.InRange(Over(Ties.AtStartOf(tied), new Square(2, 0)), 0, isHidden ? 0 : 1000);
        Assert.True(Over(Ties.AtStartOf(block), new Square(2, 0)) > 1500);
    }

    private static double Over(ImmutableArray<Point> tie, Square square)
    {
        var length = 0.0;
        for (var i = 1; i < tie.Length; i++)
            foreach (var (crossed, along) in new CrossedQuarters(tie[i - 1], tie[i]))
                length += square.Quarters.Contains(crossed) ? along : 0;
        return length;
    }

    private static IEnumerable<Point> Path(Block block) => block.Stitches[3..^3].Select(s => s.At);

    private static Block Retied(Block block, ImmutableArray<Square> full, bool isHidden)
    {
        var grid = Cloth(block, full);
        Block[] blocks = isHidden ? [block, Cover()] : [block];
        Retie(blocks, grid);
        return blocks[0];
    }

    private static void Retie(Block[] blocks, ThreadGrid cloth) =>
        new RoomyTies(new CrowdedSquares(cloth, cloth, Most).CoverOf(blocks), cloth, cloth, Most).Retie(blocks);

    private static double TooMany(Block block, ImmutableArray<Square> full)
    {
        var grid = Cloth(block, full);
        return grid.Squares.Sum(s => Math.Max(0, grid.LayersOn(s) - Most));
    }

    /// <summary>The block, and as much below it on some squares as they bear.</summary>
    private static ThreadGrid Cloth(Block block, ImmutableArray<Square> full)
    {
        var grid = new ThreadGrid(Ground);
        foreach (var square in full)
        {
            // Thread that lies inside the square alone.
            var (x, y) = (square.Middle.X, square.Middle.Y);
            while (grid.LayersOn(square) < Most)
                grid.Lay(new(x - 250, y), new(x + 250, y), ThreadGrid.ThreadWidth);
        }
        foreach (var (from, to) in block.Stitches.Zip(block.Stitches.Skip(1)))
            grid.Lay(from.At, to.At, ThreadGrid.ThreadWidth);
        return grid;
    }

    private static Block Cover() =>
        new(
            "cover",
            [
                .. from y in Enumerable.Range(-50, 101)
                from x in y % 2 == 0 ? new[] { -19_000, 19_000 } : [19_000, -19_000]
                select new Stitch(new(x, y * 380), StitchUse.Fill),
            ]
        );
}
