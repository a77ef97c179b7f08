using System.Collections.Immutable;
using CsCheck;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Stitching;
using static Splitter.Tests.Stitching.Fills.FillCases;

namespace Splitter.Tests.Stitching.Fills;

public sealed class FillStitcherTests
{
    /// <summary>What rows, tape and rounding may put a stitch outside the outline besides the pull, µm.</summary>
    private const double Slack = 150;

    private static readonly Region Patch = Samples.Ground(0, 0, 30, 0, 30, 30, 0, 30);

    [Fact]
    public void AnyShapeIsSewnInOneBlockAPolygonInsideItsOutlineWithStitchesThatCanBeSewn() =>
        Drawn.Holds(
            c =>
            {
                var piece = Whole(c.Ground, c.Angle, c.Underlay);
                var blocks = FillStitcher.Stitch(piece);
                // Of crumbs some are shorter than a stitch.
                Assert.InRange(blocks.Length, c.Ground.Polygons.Count(IsSewn), c.Ground.Polygons.Length);
                var room = Polygons.Containment(Polygons.Offset(c.Ground, Pull + Slack));
                foreach (var block in blocks)
                {
                    Sewn.AssertSewable(block);
                    foreach (var (a, b) in Sewn.Pairs(block))
                        for (var share = 0.0; share <= 1; share += 0.05)
                        {
                            var p = a.At.Towards(b.At, share);
                            Assert.True(room(p.X, p.Y), $"{b.Use} from {a.At} to {b.At} leaves the ground at {p}");
                        }
                }
            },
            cases: 150
        );

    /// <summary>
    /// Penetrations sit on the tape's 0.1 mm grid, so rows whose direction is near a simple slope of that grid (0, 1:2, 1:1)
    /// run like stairs and up to a tenth of the spacing stays open now and then: no more than 5 % of the ground.
    /// </summary>
    [Fact]
    public void RowsDrawnAsWideAsTheirSpacingCoverTheGround() =>
        Drawn.Holds(
            c =>
                Assert.InRange(
                    Sewn.Covered(c.Ground, FillStitcher.Stitch(Whole(c.Ground, c.Angle, c.Underlay))),
                    0.95,
                    1
                ),
            cases: 60
        );

    /// <summary>Rows near the diagonals of the tape's grid, each held to its place as well as that grid can.</summary>
    [Theory]
    [InlineData(44.5, 0.97)]
    [InlineData(45, 0.96)]
    [InlineData(45.45, 0.97)]
    [InlineData(134.55, 0.97)]
    public void RowsNearADiagonalOfTheTapesGridCoverTheGround(double angle, double least) =>
        Assert.InRange(Sewn.Covered(Patch, FillStitcher.Stitch(Whole(Patch, angle, underlay: false))), least, 1);

    [Fact]
    public void OverAllDirectionsRowsCoverNinetySevenPercentAndMore()
    {
        var ground = Shape([1, 0.8, 1, 0.7, 0.9, 1, 0.75], 25, [(0.1, 0.1, 0.2)]);
        var covered = Enumerable
            .Range(0, 37)
            .Average(k => Sewn.Covered(ground, FillStitcher.Stitch(Whole(ground, 4.9 * k, underlay: false))));
        Assert.InRange(covered, 0.97, 1);
    }

    /// <summary>references.md, derived: 250 rows of 100 mm are 25 m of thread and 6,250 stitches of 4 mm.</summary>
    [Fact]
    public void ASquareHasTheStitchesThatItsRowsNeed()
    {
        var blocks = FillStitcher.Stitch(Whole(Square(100_000), 0, underlay: false, pull: 0));
        var rows = Sewn.Pairs(Assert.Single(blocks))
            .Where(p => p.B.Use == StitchUse.Fill && p.A.At.Y == p.B.At.Y)
            .ToList();
        Assert.Equal(250, rows.Select(p => p.B.At.Y).Distinct().Count());
        Assert.InRange(rows.Sum(p => p.A.At.DistanceTo(p.B.At)) / 1e6, 24.9, 25.0);
        // Staggered rows have a short stitch at either end: up to one a row more than whole stitches.
        Assert.InRange(rows.Count, 6250, 6250 + 250);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(20)]
    [InlineData(90)]
    [InlineData(133.7)]
    public void TwoPartsContinueTheSameRowsAndPenetrations(double angle)
    {
        var drawing = Shape([1, 0.8, 1, 0.7, 0.9, 1, 0.75], 25, []);
        var whole = Whole(drawing, angle, underlay: false);
        FillPiece Cut(int left, int right, int reach) =>
            whole with
            {
                IsCut = true,
                Core = Part(left, right),
                EvenRows = Part(left - reach, right + reach),
                OddRows = Part(left - reach, right + reach),
            };
        Region Part(int left, int right) =>
            Polygons.Intersect(drawing, Region.Of(new Box(left, -90_000, right, 90_000)));

        var together = Penetrations(FillStitcher.Stitch(whole));
        foreach (var part in (FillPiece[])[Cut(-90_000, 0, 1600), Cut(0, 90_000, 1600)])
        {
            // Away from the part's own row ends every penetration of the undivided fill is there, and no other.
            var inside = Polygons.Containment(Polygons.Offset(part.EvenRows, -800));
            var own = Penetrations(FillStitcher.Stitch(part)).Where(p => inside(p.X, p.Y)).ToHashSet();
            var expected = together.Where(p => inside(p.X, p.Y)).ToHashSet();
            Assert.True(expected.Count > 100);
            Assert.Equal(expected.Order(), own.Order());
        }
    }

    [Fact]
    public void AtASeamRowsEndOnThePiecesGroundAndAtTheOwnEdgeTheyReachPastByThePull()
    {
        var square = Square(20_000);
        var left = Region.Of(new Box(0, 0, 12_000, 20_000));
        var piece = Whole(square, 0, underlay: true) with
        {
            IsCut = true,
            Core = Region.Of(new Box(0, 0, 10_000, 20_000)),
            EvenRows = left,
            OddRows = Region.Of(new Box(0, 0, 10_500, 20_000)),
        };
        var block = Assert.Single(FillStitcher.Stitch(piece));
        Assert.Equal(-Pull, block.Stitches.Min(s => s.At.X));
        Assert.Equal(12_000, block.Stitches.Max(s => s.At.X));
        // Row k lies at (k + 1/2) spacings.
        var odd = block.Stitches.Where(s => s.Use == StitchUse.Fill && ((s.At.Y - 200) / 400 % 2) == 1);
        Assert.Equal(10_500, odd.Max(s => s.At.X));
        Assert.All(block.Stitches.Where(s => s.Use == StitchUse.Underlay), s => Assert.InRange(s.At.X, 500, 9500));
    }

    [Fact]
    public void PartsOfAShapeThatDoNotTouchAreBlocksOfTheirOwnNearestNext()
    {
        var squares = Enumerable
            .Range(0, 5)
            .Select(i => Region.Of(new Box(i * 9000 % 45_000, 0, (i * 9000 % 45_000) + 6000, 6000)));
        var blocks = FillStitcher.Stitch(Whole(Polygons.Union(squares), 0, underlay: false));
        Assert.Equal(5, blocks.Length);
        Assert.All(
            blocks.Zip(blocks.Skip(1)),
            pair => Assert.InRange(pair.First.End.DistanceTo(pair.Second.Start), 0, 16_000)
        );
    }

    [Theory]
    [InlineData(100, 100, 0)] // Smaller than a stitch.
    [InlineData(900, 900, 1)]
    [InlineData(20_000, 150, 1)] // Between two rows.
    [InlineData(150, 20_000, 1)] // Narrower than a stitch.
    public void TinyGroundAndSliversAreSewnOrLeftOut(int width, int height, int blocks)
    {
        var at = new Box(30, 30, 30 + width, 30 + height);
        var sewn = FillStitcher.Stitch(Whole(Region.Of(at), 0, underlay: true, pull: 0));
        Assert.Equal(blocks, sewn.Length);
        Assert.All(sewn, Sewn.AssertSewable);
        var room = at.Grown((int)Slack);
        Assert.All(sewn.SelectMany(b => b.Stitches), s => Assert.True(room.Contains(s.At)));
    }

    [Fact]
    public void NeedleThinTrianglesAreSewnToTheirTips() =>
        Gen.Select(Gen.Double[0, 360], Gen.Double[0, 180])
            .Holds(
                (turn, angle) =>
                {
                    var (sin, cos) = Math.SinCos(turn * Math.PI / 180);
                    var triangle = Samples.Ground(
                        0,
                        0,
                        (30 * cos) - sin,
                        (30 * sin) + cos,
                        (30 * cos) + sin,
                        (30 * sin) - cos
                    );
                    var block = Assert.Single(FillStitcher.Stitch(Whole(triangle, angle, underlay: true)));
                    Sewn.AssertSewable(block);
                    Assert.InRange(block.Stitches.Min(s => s.At.DistanceTo(default)), 0, 6000);
                },
                cases: 60
            );

    /// <summary>Some thousand holes: hidden travel reaches every section.</summary>
    [Fact]
    public void GroundWithManyHolesIsOneBlock()
    {
        var holes = Enumerable.Range(0, 900).Select(i => Circle(3 + (i % 30 * 6), 3 + (i / 30 * 6), 1.5));
        var ground = Polygons.Subtract(Region.Of(new Box(0, 0, 180_000, 180_000)), Polygons.Union(holes));
        Sewn.AssertSewable(Assert.Single(FillStitcher.Stitch(Whole(ground, 20, underlay: false))));
    }

    private static bool IsSewn(Polygon polygon) => polygon.Area > 1e6;

    private static ImmutableArray<Point> Penetrations(ImmutableArray<Block> blocks) =>
        [.. blocks.SelectMany(b => b.Stitches).Where(s => s.Use == StitchUse.Fill).Select(s => s.At)];
}
