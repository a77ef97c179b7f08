using System.Collections.Immutable;
using System.Globalization;
using CsCheck;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Stitching;

namespace Splitter.Tests.Parts;

public sealed class JumpOrderTests
{
    private const int Scale = 10_000; // A unit is 10 mm, so that every jump is trimmed and trims do not choose.

    public static TheoryData<int[], int> Tours =>
        new()
        {
            { Tsplib.Berlin52, 7542 },
            { Tsplib.Eil51, 426 },
            { Tsplib.St70, 675 },
            { Tsplib.KroA100, 21282 },
        };

    [Fact]
    public void TheInstancesAreRememberedRightly()
    {
        Assert.Equal(7542, Tsplib.Length(Tsplib.Berlin52, [.. Tsplib.Berlin52Tour.Select(c => c - 1)]));
        Assert.Equal(426, Tsplib.Length(Tsplib.Eil51, [.. Tsplib.Eil51Tour.Select(c => c - 1)]));
        Assert.Equal(675, Tsplib.Length(Tsplib.St70, [.. Tsplib.St70Tour.Select(c => c - 1)]));
        Assert.Equal(21282, Tsplib.Length(Tsplib.KroA100, [.. Tsplib.KroA100Tour.Select(c => c - 1)]));
    }

    [Theory]
    [MemberData(nameof(Tours))]
    public void ToursAreWithinFivePercentOfTheShortest(int[] places, int shortest)
    {
        var tour = Tour(places);
        Assert.Equal(Enumerable.Range(0, places.Length / 2), tour.Order());
        Assert.InRange(Tsplib.Length(places, tour), shortest, 1.05 * shortest);
    }

    /// <summary>Closed forms: a grid of m x n has a tour of mn if that is even, else of mn - 1 + sqrt 2; a circle's goes round.</summary>
    [Theory]
    [InlineData(6, 7, 42)]
    [InlineData(5, 7, 35.4142)]
    public void GridsToo(int columns, int rows, double shortest)
    {
        int[] places = [.. Enumerable.Range(0, columns * rows).SelectMany(i => new[] { i % columns, i / columns })];
        Assert.InRange(Exactly(places, Tour(places)), shortest - 1e-3, 1.05 * shortest);
    }

    [Fact]
    public void CirclesAreGoneRound()
    {
        int[] places =
        [
            .. Enumerable
                .Range(0, 40)
                .Select(i => i * 17 % 40 * Math.PI / 20)
                .SelectMany(a => new[] { (int)(3000 * Math.Cos(a)), (int)(3000 * Math.Sin(a)) }),
        ];
        Assert.InRange(Exactly(places, Tour(places)), 0, 1.001 * 40 * 2 * 3000 * Math.Sin(Math.PI / 40));
    }

    private static readonly Gen<Point> Places = Gen.Select(
        Gen.Int[0, 60],
        Gen.Int[0, 60],
        (x, y) => Point.FromMillimetres(x, y)
    );

    private static readonly Gen<Block[]> Blocks = Gen.Select(
        Places.Array[2, 4].Where(p => p.Zip(p.Skip(1)).All(s => s.First != s.Second)),
        Gen.Int[0, 2],
        (points, kind) =>
            kind switch
            {
                0 => Still(points[0], points[^1]),
                1 => RunStitcher.Sewn("line", [.. points])!,
                _ => RunStitcher.Sewn("loop", [.. points, .. points.Reverse().Skip(1)])!,
            }
    ).Array[2, 6];

    private static readonly Gen<(Block[] Blocks, bool[] Over)> Cases = Gen.Select(
        Blocks,
        Gen.Frequency((3, Gen.Const(false)), (1, Gen.Const(true))).Array[36]
    );

    /// <summary>Brute force over all orders and ways.</summary>
    [Fact]
    public void FewBlocksAreSewnInTheBestOrder()
    {
        var (optimal, cases) = (0, 0);
        Cases.Holds(
            (blocks, over) =>
            {
                var sewn = Order(blocks, over, Point.FromMillimetres(0, 0));
                Assert.Equal(blocks.Length, sewn.Length);
                var best = Best(blocks, over);
                Assert.InRange(Cost(sewn), best - 1, best * 1.1 + 1);
                cases++;
                optimal += Cost(sewn) <= best + 1 ? 1 : 0;
            },
            cases: 150
        );
        Assert.InRange(optimal, 0.95 * cases, cases);
    }

    [Fact]
    public void WhatLiesOverStaysAfter() =>
        Gen.Select(Places.Array[2, 30], Gen.Int[2, 9])
            .Holds(
                (places, every) =>
                {
                    bool LieOver(int a, int b) => ((a * 7) + b) % every == 0;
                    var sewn = JumpOrder.Of(
                        [.. places.Select((p, i) => ImmutableArray.Create(Still(p, p, Name(i)), Still(p, p, Name(i))))],
                        Below(places.Length, LieOver),
                        null
                    );
                    Assert.Equal(2 * places.Length, sewn.Length);
                    for (var i = 0; i < sewn.Length; i++)
                    for (var k = i + 1; k < sewn.Length; k++)
                    {
                        var (first, second) = (Number(sewn[i]), Number(sewn[k]));
                        Assert.False(second < first && LieOver(second, first), $"{first} is sewn before {second}");
                    }
                },
                cases: 40
            );

    private static int[] Tour(int[] places)
    {
        Point At(int i) => new(places[2 * i] * Scale, places[(2 * i) + 1] * Scale);
        // The first city comes before all others, and once more after them.
        var sewn = JumpOrder.Of(
            [
                [Still(At(0), At(0), Name(0))],
                [.. Enumerable.Range(1, (places.Length / 2) - 1).Select(i => Still(At(i), At(i), Name(i)))],
                [Still(At(0), At(0), Name(0))],
            ],
            Below(3, (_, _) => true),
            null
        );
        Assert.Equal((0, 0), (Number(sewn[0]), Number(sewn[^1])));
        return [.. sewn.SkipLast(1).Select(Number)];
    }

    private static double Exactly(int[] places, int[] tour)
    {
        Point At(int i) => new(places[2 * i] * Scale, places[(2 * i) + 1] * Scale);
        return tour.Select((c, i) => At(c).DistanceTo(At(tour[(i + 1) % tour.Length]))).Sum() / Scale;
    }

    private static Block Still(Point start, Point end, string of = "fill") =>
        new(of, [new(start, StitchUse.Fill), new(end, StitchUse.Fill)]);

    private static string Name(int i) => i.ToString(CultureInfo.InvariantCulture);

    private static int Number(Block block) => int.Parse(block.Of, CultureInfo.InvariantCulture);

    private static ImmutableArray<Block> Order(Block[] blocks, bool[] over, Point needle) =>
        JumpOrder.Of(
            [.. blocks.Select(b => ImmutableArray.Create(b))],
            Below(blocks.Length, (a, b) => over[(6 * a) + b]),
            needle
        );

    /// <param name="lieOver">Whether of two pieces, the earlier first, the later lies over the earlier.</param>
    private static int[][] Below(int pieces, Func<int, int, bool> lieOver) =>
        [.. Enumerable.Range(0, pieces).Select(i => Enumerable.Range(0, i).Where(j => lieOver(j, i)).ToArray())];

    private static double Cost(ImmutableArray<Block> sewn)
    {
        var (sum, at) = (0.0, Point.FromMillimetres(0, 0));
        foreach (var block in sewn)
        {
            var (from, to) = block.Line.IsEmpty ? (block.Start, block.End) : (block.Line[0], block.Line[^1]);
            sum += JumpOrder.Cost(at, from);
            at = to;
        }
        return sum;
    }

    private static double Best(Block[] blocks, bool[] over)
    {
        return Rest(Point.FromMillimetres(0, 0), 0);

        double Rest(Point at, int sewn)
        {
            if (sewn == (1 << blocks.Length) - 1)
                return 0;
            var best = double.PositiveInfinity;
            for (var i = 0; i < blocks.Length; i++)
            {
                if ((sewn >> i & 1) == 1 || Enumerable.Range(0, i).Any(j => over[(6 * j) + i] && (sewn >> j & 1) == 0))
                    continue;
                foreach (var (from, to) in Ways(blocks[i]))
                    best = Math.Min(best, JumpOrder.Cost(at, from) + Rest(to, sewn | (1 << i)));
            }
            return best;
        }
    }

    private static IEnumerable<(Point, Point)> Ways(Block block) =>
        block.Line.IsEmpty ? [(block.Start, block.End)]
        : block.Line[0] == block.Line[^1] ? block.Line.Distinct().Select(p => (p, p))
        : [(block.Line[0], block.Line[^1]), (block.Line[^1], block.Line[0])];
}
