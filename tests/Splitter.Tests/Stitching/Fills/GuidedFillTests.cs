using CsCheck;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Estimates;
using Splitter.Stitching.Fills;
using Xunit.Abstractions;
using static Splitter.Tests.Stitching.Fills.FillCases;

namespace Splitter.Tests.Stitching.Fills;

/// <summary>What holds for straight rows holds for those that follow a guide.</summary>
public sealed class GuidedFillTests(ITestOutputHelper output)
{
    /// <summary>As for straight rows: what rows, tape and rounding may put a stitch outside besides the pull, µm.</summary>
    private const double Slack = 150;

    private const int RowSpacing = 400,
        StitchLength = 4000;

    [Fact]
    public void EveryStitchCanBeSewnAndLiesInsideTheShape() =>
        GuidedCases.Drawn.Holds(
            c =>
            {
                var room = Polygons.Containment(Polygons.Offset(c.Ground, Pull + Slack));
                foreach (var block in FillStitcher.Stitch(GuidedCases.Whole(c.Ground, c.Line, underlay: true)))
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
            cases: 100
        );

    [Fact]
    public void TheRowsAreAsLongAsTheAreaOverTheirSpacing() =>
        GuidedCases.Drawn.Holds(
            c =>
            {
                if (c.Ground.Area < 4e8)
                    return;
                var piece = GuidedCases.Whole(c.Ground, c.Line, pull: 0);
                var lattice = Lattice.Of((Splitter.Artwork.FillShape)piece.Shape);
                var sewn = FillStitcher
                    .Stitch(piece)
                    .SelectMany(Sewn.Pairs)
                    .Where(s =>
                        s.B.Use == StitchUse.Fill
                        && Math.Round(lattice.PlaceOf(s.A.At).T) == Math.Round(lattice.PlaceOf(s.B.At).T)
                    )
                    .Sum(s => s.A.At.DistanceTo(s.B.At));
                Assert.InRange(sewn / (c.Ground.Area / RowSpacing), 0.98, 1.02);
            },
            cases: 100
        );

    [Fact]
    public void NoStitchIsLongerThanTheRecipeSaysButForCrowdedRowEnds() =>
        GuidedCases.Drawn.Holds(
            c =>
            {
                var longest =
                    StitchLength
                    + (2 * (PolygonSewer.RowEnd + (PolygonSewer.RowSteps * Units.TapeStep)))
                    + StitchRules.GridSlack;
                foreach (var block in FillStitcher.Stitch(GuidedCases.Whole(c.Ground, c.Line, underlay: true)))
                foreach (var (a, b) in Sewn.Pairs(block))
                    Assert.True(a.At.DistanceTo(b.At) <= longest, $"{b.Use} from {a.At} to {b.At}");
            },
            cases: 60
        );

    /// <summary>Cut by any straight line, either part sews the rows and penetrations of the whole.</summary>
    [Fact]
    public void PartsCutAnywhereContinueTheSameRowsAndPenetrations() =>
        Gen.Select(GuidedCases.Drawn, Gen.Double[0, 180], Gen.Double[-0.3, 0.3])
            .Holds(
                (c, turn, away) =>
                {
                    var whole = GuidedCases.Whole(c.Ground, c.Line);
                    var together = Holes(whole).ToHashSet();
                    var frame = new StraightFrame(turn);
                    foreach (var side in (double[])[1, -1])
                    {
                        var half = new Ring([
                            .. new (double U, double V)[] { (-99, -1), (99, -1), (99, 99), (-99, 99) }.Select(p =>
                                frame.At(p.U * 1000, (away * 25_000) + (side * p.V * 1000)).From(default)
                            ),
                        ]);
                        var rows = Polygons.Intersect(c.Ground, Polygons.FromRings([half], FillRule.NonZero));
                        // Inside a bend the last stitches of a row are shorter than on the guide.
                        var inside = Polygons.Containment(Polygons.Offset(rows, -1000));
                        var part = whole with { IsCut = true, Core = rows, EvenRows = rows, OddRows = rows };
                        Assert.Equal(
                            together.Where(p => inside(p.X, p.Y)).Order(),
                            Holes(part).Where(p => inside(p.X, p.Y)).Distinct().Order()
                        );
                    }
                },
                cases: 60
            );

    /// <summary>As straight rows: none under 95 %, and 97 % on average over all directions.</summary>
    [Fact]
    public void RowsDrawnAsWideAsTheirSpacingCoverTheGround()
    {
        var all = new List<double>();
        GuidedCases.Drawn.Holds(
            c =>
            {
                all.Add(Sewn.Covered(c.Ground, FillStitcher.Stitch(GuidedCases.Whole(c.Ground, c.Line))));
                Assert.InRange(all[^1], 0.95, 1);
            },
            cases: 40
        );
        output.WriteLine(
            FormattableString.Invariant($"covered {all.Min():P2} to {all.Max():P2}, {all.Average():P2} on average")
        );
        Assert.InRange(all.Average(), 0.97, 1);
    }

    /// <summary>A row 20 mm beside a guide that is an arc of 40 mm: half as long inside, half as long again outside.</summary>
    [Fact]
    public void StitchesKeepTheirLengthOutsideAndInsideABend()
    {
        var arc = new Polyline([.. Enumerable.Range(0, 19).Select(i => Around(40, 10 * i))]);
        var ground = Polygons.FromRings(
            [
                new([
                    .. Enumerable.Range(0, 181).Select(i => Around(20.5, i)),
                    .. Enumerable.Range(0, 181).Select(i => Around(59.5, 180 - i)),
                ]),
            ],
            FillRule.NonZero
        );
        var block = Assert.Single(FillStitcher.Stitch(GuidedCases.Whole(ground, arc, pull: 0)));
        var rows = Sewn.Pairs(block).Where(s => s.B.Use == StitchUse.Fill && s.A.Use == StitchUse.Fill).ToList();
        var outer = rows.Where(s => s.A.At.DistanceTo(default) > 55_000).Select(s => s.A.At.DistanceTo(s.B.At));
        var inner = rows.Where(s => s.A.At.DistanceTo(default) < 25_000).Select(s => s.A.At.DistanceTo(s.B.At));
        Assert.InRange(outer.Order().ElementAt(outer.Count() / 2), 2000, 4100);
        Assert.InRange(inner.Order().ElementAt(inner.Count() / 2), 1000, 4100);
        Sewn.AssertSewable(block);

        static Point Around(double radius, int degrees) =>
            Point.FromMillimetres(
                radius * Math.Cos(degrees * Math.PI / 180),
                radius * Math.Sin(degrees * Math.PI / 180)
            );
    }

    /// <summary>A straight guide is a direction: the same rows as at an angle, but for where they are counted from.</summary>
    [Fact]
    public void AStraightGuideGivesAsManyStitchesAsAnAngle() =>
        FillCases.Drawn.Holds(
            c =>
            {
                if (c.Ground.Area < 4e8)
                    return;
                var frame = new StraightFrame(c.Angle);
                var line = new Polyline([frame.At(-20_000, 0).From(default), frame.At(20_000, 0).From(default)]);
                var guided = Stitches(GuidedCases.Whole(c.Ground, line, c.Underlay));
                Assert.InRange(guided / (double)Stitches(FillCases.Whole(c.Ground, c.Angle, c.Underlay)), 0.97, 1.03);
            },
            cases: 40
        );

    /// <summary>As the figures of whole plans are held to 7 % for single parts: all of these together, and each.</summary>
    [Fact]
    public void EstimatesComeNearTheStitches()
    {
        var (estimated, sewn) = (0.0, 0.0);
        GuidedCases.Drawn.Holds(
            c =>
            {
                var piece = GuidedCases.Whole(c.Ground, c.Line, underlay: true);
                var (about, exact) = (PieceEstimate.Of(piece).Stitches, Stitches(piece));
                (estimated, sewn) = (estimated + about, sewn + exact);
                if (exact > 2000)
                    Assert.InRange(about / exact, 0.93, 1.07);
            },
            cases: 60
        );
        output.WriteLine(FormattableString.Invariant($"estimated / sewn {estimated / sewn:0.000}"));
        Assert.InRange(estimated / sewn, 0.97, 1.03);
    }

    private static int Stitches(FillPiece piece) => FillStitcher.Stitch(piece).Sum(b => b.Stitches.Length);

    private static IEnumerable<Point> Holes(FillPiece piece) =>
        FillStitcher.Stitch(piece).SelectMany(b => b.Stitches).Where(s => s.Use == StitchUse.Fill).Select(s => s.At);
}
