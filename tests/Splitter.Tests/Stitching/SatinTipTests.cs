using System.Collections.Immutable;
using CsCheck;
using Splitter.Artwork;
using Splitter.Artwork.Columns;
using Splitter.Cutting;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Stitching;
using Splitter.Tests.Artwork.Columns;

namespace Splitter.Tests.Stitching;

/// <summary>Columns that run out in a point: satin goes on into it, narrower and narrower, and closes it.</summary>
public sealed class SatinTipTests
{
    /// <summary>How far from its point a tip is looked at, µm.</summary>
    private const int Reach = 3000;

    /// <summary>How near to a point thread must come to close it, µm: a step of the tape, and an outline's detail.</summary>
    private const double Near = 120;

    public static TheoryData<string> Pointed => ["star", "star of seven", "leaf", "crescent"];

    /// <summary>A triangle with a tip of 4 to 40 degrees, turned any way.</summary>
    private static readonly Gen<(Region Ground, Point Tip)> Pennants = Gen.Select(
        Gen.Double[2, 20],
        Gen.Double[0, 360],
        (half, turned) =>
        {
            // No wider than 6 mm, no longer than 25 mm.
            var length = Math.Min(25, 3 / Math.Tan(half * Math.PI / 180));
            var (sin, cos) = Math.SinCos(turned * Math.PI / 180);
            var wide = length * Math.Tan(half * Math.PI / 180);
            Point At(double x, double y) => Point.FromMillimetres((x * cos) - (y * sin), (x * sin) + (y * cos));
            return (
                Polygons.FromRings([new([At(0, -wide), At(0, wide), At(length, 0)])], FillRule.NonZero),
                At(length, 0)
            );
        }
    );

    [Theory]
    [MemberData(nameof(Pointed))]
    public void ColumnsEndInTheTipsOfTheirOutline(string name)
    {
        var ground = OutlineColumnsTests.Shape(name);
        var columns = OutlineColumns.From(ground, SatinWidest);
        var ends = columns.SelectMany(c => new[] { c.Rungs[0].Middle, c.Rungs[^1].Middle }).ToList();
        Assert.All(Tips(ground), tip => Assert.InRange(ends.Min(e => e.DistanceTo(tip)), 0, Near));
    }

    [Theory]
    [MemberData(nameof(Pointed))]
    public void SatinCoversTheTipsOfAnOutline(string name)
    {
        var ground = OutlineColumnsTests.Shape(name);
        var blocks = Sew(ground, pull: 200, [UnderlayKind.Centre]);
        Assert.All(blocks, Sewn.AssertSewable);
        foreach (var tip in Tips(ground))
            AssertClosed(ground, tip, blocks);
    }

    [Fact]
    public void SatinCoversAnyPoint() =>
        Gen.Select(Pennants, Gen.Int[100, 300], Gen.Bool)
            .Holds(
                (pennant, pull, hasUnderlay) =>
                {
                    var (ground, tip) = pennant;
                    var blocks = Sew(ground, pull, hasUnderlay ? [UnderlayKind.Edge] : []);
                    Assert.All(blocks, Sewn.AssertSewable);
                    Assert.All(blocks, b => Sewn.AssertWithin(Polygons.Offset(ground, pull + 150), b));
                    AssertClosed(ground, tip, blocks);
                },
                cases: 60
            );

    /// <summary>
    /// Towards the point stitches get shorter with the column: neither is one longer than the column, its pull and the
    /// tape's grid make it, nor is there a stretch with stitches along it only where two could lie across.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(100)]
    [InlineData(200)]
    [InlineData(300)]
    public void StitchesGetShorterWithTheColumn(int pull)
    {
        // 5 mm wide, 25 mm long: 0.2 mm narrower with each millimetre.
        var ground = OutlineSamples.Of("0 -2.5, 0 2.5, 25 0");
        var satin = Sew(ground, pull, [])
            .SelectMany(Sewn.Pairs)
            .Where(p => p.B.Use == StitchUse.Satin && p.A.Use == StitchUse.Satin)
            .Select(p => (Across: Math.Abs(p.A.At.Y - p.B.At.Y), Width: 0.2 * (25_000 - Math.Min(p.A.At.X, p.B.At.X))))
            .ToList();
        Assert.All(satin, s => Assert.InRange(s.Across, 0, s.Width + (2 * pull) + StitchRules.GridSlack));
        // Stitches 0.2 mm apart and 0.3 mm across are longer than the shortest.
        Assert.All(
            satin.Where(s => s.Width is > 350 and < 600),
            s => Assert.True(s.Across >= s.Width - (2 * StitchRules.GridSlack), $"{s.Across} across {s.Width}")
        );
    }

    private const int SatinWidest = 8000;

    /// <summary>The thread comes to a tip's point, and no cloth shows between there and the column.</summary>
    private static void AssertClosed(Region ground, Point tip, ImmutableArray<Block> blocks)
    {
        var nearest = blocks.SelectMany(b => b.Stitches).Min(s => s.At.DistanceTo(tip));
        Assert.InRange(nearest, 0, Near);
        var disc = Polygons.Stroke(new([tip, new(tip.X + 1, tip.Y)]), 2 * Reach, Cap.Round, Join.Round);
        Assert.InRange(Sewn.Covered(Polygons.Intersect(ground, disc), blocks, StitchUse.Satin), 0.99, 1);
    }

    /// <summary>Where the outline turns by more than 100 degrees, to the outside.</summary>
    private static ImmutableArray<Point> Tips(Region ground)
    {
        var ring = Assert.Single(ground.Rings).Points;
        var tips = Enumerable
            .Range(0, ring.Length)
            .Where(i =>
            {
                var (before, at, after) = (
                    ring[(i + ring.Length - 1) % ring.Length],
                    ring[i],
                    ring[(i + 1) % ring.Length]
                );
                var (come, go) = (Vector.Between(before, at), Vector.Between(at, after));
                return Vector.Dot(come.Unit, go.Unit) < Math.Cos(100 * Math.PI / 180)
                    && !IsInner(ground, before, after);
            })
            .Select(i => ring[i])
            .ToImmutableArray();
        Assert.NotEmpty(tips);
        return tips;
    }

    private static bool IsInner(Region ground, Point before, Point after)
    {
        var middle = before.Towards(after, 0.5);
        return !Polygons.Containment(ground)(middle.X, middle.Y);
    }

    private static ImmutableArray<Block> Sew(Region ground, int pull, ImmutableArray<UnderlayKind> underlay)
    {
        var columns = OutlineColumns.From(ground, SatinWidest);
        Assert.NotEmpty(columns);
        return SatinStitcher.Stitch(
            new SatinPiece
            {
                Shape = new SatinShape
                {
                    Id = "satin",
                    Place = new Place("test.svg", 1, 1),
                    Thread = 0,
                    Style = new()
                    {
                        RowSpacing = 400,
                        StitchLength = 4000,
                        Pull = pull,
                        Underlay = underlay,
                    },
                    Columns = columns,
                    Footprint = ground,
                },
                Hooping = 0,
                Columns = columns,
            }
        );
    }
}
