using CsCheck;
using Splitter.Geometry;

namespace Splitter.Tests.Geometry;

public sealed class ApartGroundTests
{
    /// <summary>
    /// 6,000 dashes in rows: compared as a whole, each with all others, they were 18 million pairs. No two that come near
    /// each other are parted.
    /// </summary>
    [Theory]
    [InlineData(400, ApartGround.Together)]
    [InlineData(600, 100)]
    public void ManyDashesAreDivided(int reach, int most)
    {
        // 1 mm long and as far apart; rows are 2 mm apart.
        var dashes = new Region([
            .. Enumerable
                .Range(0, 6000)
                .Select(i => Dash(2000 * (i % 100), 2000 * (i / 100)))
                .SelectMany(dash => dash.Polygons),
        ]);
        var apart = ApartGround.Of(dashes, reach).ToList();
        Assert.All(apart, some => Assert.InRange(some.Polygons.Length, 1, most));
        Assert.Equal(dashes.Polygons.Length, apart.Sum(some => some.Polygons.Length));

        Region Dash(int x, int y) => Region.Of(new(x, y, x + 1000, y + 400));
    }

    /// <summary>Whatever is divided, no polygon comes near one of another region, and none is lost.</summary>
    [Fact]
    public void WhatComesNearStaysTogether() =>
        (
            from boxes in Gen.Select(Gen.Int[0, 300], Gen.Int[0, 300], Gen.Int[1, 9], Gen.Int[1, 9]).Array[1, 200]
            from reach in Gen.Int[1, 12]
            select (boxes, reach)
        ).Holds(t =>
        {
            var ground = new Region([
                .. t.boxes.Select(b =>
                    Region.Of(new(b.Item1, b.Item2, b.Item1 + b.Item3, b.Item2 + b.Item4)).Polygons[0]
                ),
            ]);
            var apart = ApartGround.Of(ground, t.reach).ToList();
            Assert.Equal(
                ground.Polygons.Select(p => p.Outer.Bounds).Order(Comparer),
                apart.SelectMany(some => some.Polygons).Select(p => p.Outer.Bounds).Order(Comparer)
            );
            for (var i = 0; i < apart.Count; i++)
            for (var j = 0; j < i; j++)
                Assert.DoesNotContain(
                    apart[i].Polygons,
                    p => apart[j].Polygons.Any(q => Near(p, t.reach).Meets(Near(q, t.reach)))
                );
        });

    /// <summary>The offset of all is that of each, where none comes near another.</summary>
    [Theory]
    [InlineData(300, Join.Round)]
    [InlineData(-100, Join.Mitre)]
    internal void TheOffsetIsThatOfEach(int by, Join join)
    {
        var some = Enumerable
            .Range(0, 200)
            .Select(i => (X: i % 20 * 5.0, Y: i / 20 * 5.0, Lean: i % 7 * 0.21))
            .Select(p =>
                Samples.Ground(p.X, p.Y + p.Lean, p.X + 2, p.Y, p.X + 2 + p.Lean, p.Y + 1.5, p.X + p.Lean, p.Y + 2)
            )
            .ToList();
        Assert.Equal(
            Polygons.Union(some.Select(ground => Polygons.Offset(ground, by, join))).Rings,
            Polygons.Offset(Polygons.Union(some), by, join).Rings
        );
    }

    private static Box Near(Polygon polygon, int reach) => polygon.Outer.Bounds.Grown(reach);

    private static Comparer<Box> Comparer { get; } =
        Comparer<Box>.Create(
            (a, b) => (a.Left, a.Top, a.Right, a.Bottom).CompareTo((b.Left, b.Top, b.Right, b.Bottom))
        );
}
