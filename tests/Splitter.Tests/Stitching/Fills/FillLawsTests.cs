using System.Text;
using CsCheck;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Stitching;
using Splitter.Stitching.Fills;
using static Splitter.Tests.Stitching.Fills.FillCases;

namespace Splitter.Tests.Stitching.Fills;

/// <summary>What holds for the rows of every fill.</summary>
public sealed class FillLawsTests
{
    /// <summary>How far outside the ground a hidden way may lie where it follows the outline: half a thread's width, µm.</summary>
    private const double Beside = Shortcut.Straying + (StitchRules.GridSlack / 2);

    /// <summary>Measured on these grounds: as many.</summary>
    private const int MostHoles = 9;

    /// <summary>Measured on these grounds: 0.032.</summary>
    private const double MostBare = 0.035;

    private const int RowSpacing = 400,
        StitchLength = 4000;

    /// <summary>
    /// The area over the row spacing. Nothing is added for row ends, since rows end on the outline when there is no pull;
    /// turns are left out. Lattice and outline meet by chance: two rows more or less on ground that is some hundred high.
    /// </summary>
    [Fact]
    public void TheRowsAreAsLongAsTheAreaOverTheirSpacing() =>
        Drawn.Holds(
            c =>
            {
                if (c.Ground.Area < 4e8)
                    return;
                var blocks = FillStitcher.Stitch(Whole(c.Ground, c.Angle, c.Underlay, pull: 0));
                var sewn = blocks.SelectMany(b => RowStitches(b, c.Angle)).Sum(s => s.A.At.DistanceTo(s.B.At));
                Assert.InRange(sewn / (c.Ground.Area / RowSpacing), 0.98, 1.02);
            },
            cases: 150
        );

    [Fact]
    public void HiddenTravelAndUnderlayStayInsideTheShape() =>
        Drawn.Holds(
            c =>
            {
                var room = Polygons.Containment(Polygons.Offset(c.Ground, Beside));
                foreach (var block in FillStitcher.Stitch(Whole(c.Ground, c.Angle, c.Underlay)))
                foreach (var (a, b) in Sewn.Pairs(block))
                {
                    if (b.Use is not (StitchUse.Travel or StitchUse.Underlay))
                        continue;
                    for (var share = 0.0; share <= 1; share += 0.02)
                    {
                        var p = a.At.Towards(b.At, share);
                        // Row ends lie outside by the pull, and ways start and end there.
                        if (p.DistanceTo(a.At) > Pull + Beside && p.DistanceTo(b.At) > Pull + Beside)
                            Assert.True(room(p.X, p.Y), $"{b.Use} from {a.At} to {b.At} leaves the ground at {p}");
                    }
                }
            },
            cases: 150
        );

    /// <summary>
    /// Travel lies under rows that are sewn later, but for the ends of ways and where ground divides again and again: of all
    /// travel on these grounds a small share is covered by none.
    /// </summary>
    [Fact]
    public void TravelLiesUnderRowsToCome()
    {
        var (all, bare) = (0, 0);
        Drawn.Holds(
            c =>
            {
                foreach (var block in FillStitcher.Stitch(Whole(c.Ground, c.Angle, c.Underlay)))
                {
                    var last = new Dictionary<Point, int>();
                    foreach (var (i, at) in Places(block, StitchUse.Fill))
                        last[at] = i;
                    foreach (var (i, at) in Places(block, StitchUse.Travel))
                    {
                        all++;
                        bare += Near(at).All(place => last.GetValueOrDefault(place, -1) < i) ? 1 : 0;
                    }
                }
            },
            cases: 150
        );
        Assert.InRange(bare / (double)all, 0, MostBare);

        static IEnumerable<Point> Near(Point at) =>
            from x in Enumerable.Range(-1, 3)
            from y in Enumerable.Range(-1, 3)
            select at + new Point(x, y);

        // Squares of a row spacing that stitches of one use pass.
        static IEnumerable<(int Stitch, Point At)> Places(Block block, StitchUse use) =>
            from pair in Sewn.Pairs(block).Index()
            where pair.Item.B.Use == use
            from step in Enumerable.Range(0, 40)
            let p = pair.Item.A.At.Towards(pair.Item.B.At, step / 40.0)
            select (pair.Index, new Point(p.X / RowSpacing, p.Y / RowSpacing));
    }

    /// <summary>
    /// A row's last penetration is left out where it crowds the end: that much longer at either end; and on the tape's
    /// grid penetrations move along the row to lie on it.
    /// </summary>
    [Fact]
    public void NoStitchIsLongerThanTheRecipeSaysButForCrowdedRowEnds() =>
        Drawn.Holds(
            c =>
            {
                var longest =
                    StitchLength
                    + (2 * (PolygonSewer.RowEnd + (PolygonSewer.RowSteps * Units.TapeStep)))
                    + StitchRules.GridSlack;
                foreach (var block in FillStitcher.Stitch(Whole(c.Ground, c.Angle, c.Underlay)))
                foreach (var (a, b) in Sewn.Pairs(block))
                    Assert.True(a.At.DistanceTo(b.At) <= longest, $"{b.Use} from {a.At} to {b.At}");
            },
            cases: 60
        );

    /// <summary>Cut by any straight line, either part sews the rows and penetrations of the whole.</summary>
    [Fact]
    public void PartsOfAnyShapeCutAnywhereContinueTheSameRowsAndPenetrations() =>
        Gen.Select(Drawn, Gen.Double[0, 180], Gen.Double[-0.3, 0.3])
            .Holds(
                (c, turn, away) =>
                {
                    var whole = Whole(c.Ground, c.Angle, underlay: false);
                    var together = Holes(whole).ToHashSet();
                    var (sin, cos) = Math.SinCos(turn * Math.PI / 180);
                    foreach (var side in (double[])[1, -1])
                    {
                        var half = Samples.Ground([
                            .. new (double Along, double Across)[]
                            {
                                (-99, 0),
                                (99, 0),
                                (99, 99),
                                (-99, 99),
                            }.SelectMany(p =>
                            {
                                var (u, v) = (p.Along, (away * 25) + (side * (p.Across - 1)));
                                return new[] { (u * cos) - (v * sin), (u * sin) + (v * cos) };
                            }),
                        ]);
                        var rows = Polygons.Intersect(c.Ground, half);
                        var inside = Polygons.Containment(Polygons.Offset(rows, -800));
                        var part = whole with { IsCut = true, Core = rows, EvenRows = rows, OddRows = rows };
                        Assert.Equal(
                            together.Where(p => inside(p.X, p.Y)).Order(),
                            Holes(part).Where(p => inside(p.X, p.Y)).Distinct().Order()
                        );
                    }
                },
                cases: 60
            );

    /// <summary>
    /// Rows alone have about one penetration on a square millimetre, and three where they end. Ways and ties bring more;
    /// a way that turned on every row brought up to thirteen.
    /// </summary>
    [Fact]
    public void NowhereDoesABlockPierceASquareMillimetreTooOften() =>
        Drawn.Holds(
            c =>
            {
                foreach (var block in FillStitcher.Stitch(Whole(c.Ground, c.Angle, c.Underlay)))
                {
                    var fullest = block
                        .Stitches.GroupBy(s => (Math.Floor(s.At.X / 1000.0), Math.Floor(s.At.Y / 1000.0)))
                        .Max(g => g.Count());
                    Assert.InRange(fullest, 1, MostHoles);
                }
            },
            cases: 150
        );

    /// <summary>
    /// Penetrations lie evenly in all directions: in none do they line up so that lines of them are further apart than
    /// 1.7 times the penetrations in a line (even in all directions would be 0.87, the hexagonal arrangement). The lattice
    /// is the same everywhere, so what holds about one penetration holds about all.
    /// </summary>
    [Theory]
    [InlineData(400, 4000)]
    [InlineData(350, 3500)]
    [InlineData(450, 4500)]
    [InlineData(400, 3000)]
    [InlineData(250, 3500)]
    [InlineData(600, 5000)]
    [InlineData(1000, 4000)]
    public void PenetrationsFormNoFurrow(int spacing, int stitch)
    {
        var lattice = new Lattice(new StraightFrame(0), spacing, stitch, Region.Empty);
        var holes = Enumerable
            .Range(-12, 25)
            .SelectMany(row =>
                lattice.Penetrations(row, -3 * stitch, 3 * stitch).Select(u => new Vector(u, row * spacing))
            )
            .ToList();
        var centre = holes.Where(h => h.Y == 0).MinBy(h => Math.Abs(h.X));
        var nearest = holes.Where(h => h != centre).Min(h => new Vector(h.X - centre.X, h.Y - centre.Y).Length);
        Assert.InRange(spacing * (double)stitch / nearest / nearest, 0.86, 1.7);
    }

    /// <summary>Each row's penetrations lie the asked-for share of a stitch further on than those of the row before.</summary>
    [Theory]
    [InlineData(1, 2)]
    [InlineData(1, 4)]
    [InlineData(3, 8)]
    [InlineData(5, 16)]
    public void RowsAreStaggeredAsAsked(int part, int whole)
    {
        const int Stitch = 4000;
        var lattice = new Lattice(new StraightFrame(0), 400, Stitch, Region.Empty, new Stagger(part, whole));
        for (var row = -20; row < 20; row++)
        {
            var moved = (First(row + 1) - First(row)) / Stitch;
            Assert.Equal((double)part / whole, moved < 0 ? moved + 1 : moved, 1e-9);
            Assert.Equal(First(row), First(row + whole), 1e-6);
        }

        double First(int row) => lattice.Penetrations(row, -1, Stitch - 1).First();
    }

    /// <summary>A recipe's stagger reaches the needle: the holes of rows repeat after as many rows as it says.</summary>
    [Theory]
    [InlineData("", 8)]
    [InlineData(", stagger: 1/4", 4)]
    public void ARecipesStaggerIsSewn(string key, int rows)
    {
        var recipe = $$"""
            splitter: 1
            artwork:
              shapes: [{ wkt: "POLYGON ((0 0, 60 0, 60 60, 0 60, 0 0))", id: square, fill: "#14304f" }]
              sew:
                - { match: { id: square }, as: fill, angle: 0 deg, row-spacing: 0.4 mm, stitch-length: 4 mm, underlay: none{{key}} }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: parts, files: [tape] }
            """;
        var made = Pipeline.Make(new("square.yaml", Encoding.UTF8.GetBytes(recipe), _ => default));
        var holes = made
            .Value.Sets.Single()
            .Parts.SelectMany(p => p.Steps)
            .SelectMany(s => s.Moves)
            .SelectMany(m => m.Block.Stitches)
            .Where(s => s.Use == StitchUse.Fill)
            .Select(s => s.At)
            .Where(at => at.X is > 10_000 and < 50_000 && at.Y is > 10_000 and < 50_000)
            .ToHashSet();
        var repeats = Enumerable
            .Range(1, 8)
            .First(n => holes.Where(h => h.Y < 40_000).All(h => holes.Contains(h with { Y = h.Y + (n * 400) })));
        Assert.Equal(rows, repeats);
    }

    private static IEnumerable<Point> Holes(FillPiece piece) =>
        FillStitcher.Stitch(piece).SelectMany(b => b.Stitches).Where(s => s.Use == StitchUse.Fill).Select(s => s.At);

    /// <summary>Stitches along a row: both ends lie on it.</summary>
    private static IEnumerable<(Stitch A, Stitch B)> RowStitches(Block block, double angle)
    {
        var lattice = new Lattice(new StraightFrame(angle), RowSpacing, StitchLength, Region.Empty);
        return Sewn.Pairs(block)
            .Where(s =>
                s.B.Use == StitchUse.Fill
                && Math.Round(lattice.PlaceOf(s.A.At).T) == Math.Round(lattice.PlaceOf(s.B.At).T)
            );
    }
}
