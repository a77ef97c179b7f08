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

public sealed class SatinStitcherTests
{
    private const int Pull = 200;

    /// <summary>What tape, ties and rounding may put a stitch outside the outline besides the pull, µm.</summary>
    private const double Slack = 150;

    private static readonly ImmutableArray<UnderlayKind>[] Kinds =
    [
        [],
        [UnderlayKind.Centre],
        [UnderlayKind.Edge],
        [UnderlayKind.Cross],
        [UnderlayKind.Edge, UnderlayKind.Cross],
    ];

    private static readonly Gen<ImmutableArray<UnderlayKind>> Underlays = Gen.Int[0, Kinds.Length - 1]
        .Select(k => Kinds[k]);

    [Fact]
    public void AnyStrokeIsOneBlockInsideItsOutlineWithStitchesThatCanBeSewn() =>
        Gen.Select(
                Gen.OneOf(StrokePaths.AnyCornered, StrokePaths.AnySmooth),
                Gen.Int[1000, 12_000],
                Gen.Enum<Cap>(),
                Underlays
            )
            .Holds(
                (path, width, cap, underlay) =>
                {
                    var columns = StrokeColumns.From(path, width, cap, Join.Round, 4);
                    var ground = Polygons.Union(
                        Polygons.Stroke(path, width, cap, Join.Round),
                        ColumnGround.Of(columns)
                    );
                    var block = Assert.Single(SatinStitcher.Stitch(Piece(columns, ground, underlay)));
                    Sewn.AssertSewable(block);
                    Sewn.AssertWithin(Polygons.Offset(ground, Pull + Slack), block);
                },
                cases: 150
            );

    [Fact]
    public void StitchesDrawnAsWideAsThreadCoverAStroke() =>
        Gen.Select(StrokePaths.AnySmooth, Gen.Int[1500, 9000], Underlays)
            .Where((path, width, _) => StrokePaths.EndsRunOn(path, width / 2))
            .Holds(
                (path, width, underlay) =>
                {
                    var columns = StrokeColumns.From(path, width, Cap.Butt, Join.Round, 4);
                    var ground = Polygons.Stroke(path, width, Cap.Butt, Join.Round);
                    var covered = Sewn.Covered(
                        ground,
                        SatinStitcher.Stitch(Piece(columns, ground, underlay)),
                        StitchUse.Satin
                    );
                    Assert.InRange(covered, 0.97, 1);
                },
                cases: 40
            );

    /// <summary>A straight column's stitches by hand: 50 mm at 0.4 mm an edge are 250 crossings of 5 mm and the pull.</summary>
    [Fact]
    public void AStraightColumnHasTheStitchesThatItsLengthNeeds()
    {
        var column = new Column([new(new(0, 0), new(0, 5000)), new(new(50_000, 0), new(50_000, 5000))]);
        var block = Assert.Single(SatinStitcher.Stitch(Piece([column], Samples.Ground(0, 0, 50, 0, 50, 5, 0, 5), [])));
        var across = Sewn.Pairs(block)
            .Where(p => p.B.Use == StitchUse.Satin && p.A.At.DistanceTo(p.B.At) > 3000)
            .ToList();
        // Both ends of the first and of the last rung are sewn.
        Assert.InRange(across.Count, 250, 253);
        Assert.All(across, p => Assert.InRange(p.A.At.DistanceTo(p.B.At), 5400, 5410));
    }

    [Fact]
    public void ColumnsThatTouchAreSewnInOneGo()
    {
        // A stem with two arms, and a dot that touches nothing.
        Column Bar(int x1, int y1, int x2, int y2, int half) =>
            x1 == x2
                ? new([new(new(x1 - half, y1), new(x1 + half, y1)), new(new(x2 - half, y2), new(x2 + half, y2))])
                : new([new(new(x1, y1 - half), new(x1, y1 + half)), new(new(x2, y2 - half), new(x2, y2 + half))]);
        ImmutableArray<Column> columns =
        [
            Bar(0, 0, 0, 30_000, 2000),
            Bar(1500, 2000, 15_000, 2000, 2000),
            Bar(1500, 15_000, 12_000, 15_000, 2000),
            Bar(40_000, 0, 40_000, 3000, 1500),
        ];
        var ground = ColumnGround.Of(columns);
        var blocks = SatinStitcher.Stitch(Piece(columns, ground, [UnderlayKind.Centre]));
        Assert.Equal(2, blocks.Length);
        Assert.All(blocks, b => Sewn.AssertWithin(Polygons.Offset(ground, Pull + Slack), b));
        Assert.InRange(Sewn.Covered(ground, blocks, StitchUse.Satin), 0.99, 1);
    }

    /// <summary>
    /// Arms begin around a middle 1 mm across, and the thread crosses it once for each at most: to come back to the same place
    /// each time takes twice as much, all on the same square millimetre.
    /// </summary>
    [Theory]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(8)]
    public void AStarPassesTheThreadStraightFromArmToArm(int arms)
    {
        ImmutableArray<Column> columns =
        [
            .. Enumerable
                .Range(0, arms)
                .SelectMany(i =>
                {
                    var (sin, cos) = Math.SinCos(2 * Math.PI * i / arms);
                    return StrokeColumns.From(
                        new([Point.FromMillimetres(0.5 * cos, 0.5 * sin), Point.FromMillimetres(10 * cos, 10 * sin)]),
                        2000,
                        Cap.Butt,
                        Join.Round,
                        4
                    );
                }),
        ];
        var middle = Polygons.Stroke(new([new(0, 0), new(1, 0)]), 2000, Cap.Round, Join.Round);
        var ground = Polygons.Union([ColumnGround.Of(columns), middle]);
        var block = Assert.Single(SatinStitcher.Stitch(Piece(columns, ground, [UnderlayKind.Centre])));
        var travel = Sewn.Pairs(block).Where(p => p.B.Use == StitchUse.Travel).Sum(p => p.A.At.DistanceTo(p.B.At));
        Assert.InRange(travel, 0, arms * Units.Millimetre);
    }

    /// <summary>
    /// A column with underlay is begun 0.8 mm inside, where its satin hides the tie; a short one, or one without underlay, at its
    /// end.
    /// </summary>
    [Theory]
    [InlineData(20, true, 800)]
    [InlineData(3.3, true, 800)]
    [InlineData(3.1, true, 0)]
    [InlineData(20, false, 0)]
    public void AColumnIsBegunALittleInside(double length, bool hasUnderlay, int inside)
    {
        var columns = StrokeColumns.From(
            new([new(0, 0), Point.FromMillimetres(length, 0)]),
            3000,
            Cap.Butt,
            Join.Round,
            4
        );
        ImmutableArray<UnderlayKind> underlay = hasUnderlay ? [UnderlayKind.Centre] : [];
        var block = Assert.Single(SatinStitcher.Stitch(Piece(columns, ColumnGround.Of(columns), underlay)));
        var begins = Ties.PathStart(block).X;
        Assert.InRange(Math.Min(begins, (length * 1000) - begins), inside - 100, inside + 100);
    }

    /// <summary>Thread over the bare cloth between dashes would show, whichever way the line runs.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(30)]
    [InlineData(45)]
    [InlineData(90)]
    public void DashesAreBlocksOfTheirOwn(double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var dashes = Enumerable
            .Range(0, 6)
            .Select(i => new Polyline([
                Point.FromMillimetres(12 * i * cos, 12 * i * sin),
                Point.FromMillimetres(((12 * i) + 10) * cos, ((12 * i) + 10) * sin),
            ]))
            .ToList();
        var ground = Polygons.Union(dashes.Select(d => Polygons.Stroke(d, 4000, Cap.Butt, Join.Round)));
        var blocks = SatinStitcher.Stitch(
            Piece([.. dashes.SelectMany(d => StrokeColumns.From(d, 4000, Cap.Butt, Join.Round, 4))], ground, [])
        );
        Assert.Equal(dashes.Count, blocks.Length);
        Assert.All(blocks, b => Sewn.AssertWithin(Polygons.Offset(ground, Pull + Slack), b));
    }

    [Theory]
    [InlineData(1000)]
    [InlineData(1400)]
    [InlineData(1700)]
    [InlineData(5000)]
    public void AShortColumnPassesTheThreadOn(int length)
    {
        Column Bar(int from, int to) => new([new(new(from, 0), new(from, 4000)), new(new(to, 0), new(to, 4000))]);
        ImmutableArray<Column> columns =
        [
            Bar(0, 10_000),
            Bar(10_000, 10_000 + length),
            Bar(10_000 + length, 20_000 + length),
        ];
        foreach (
            var order in (int[][])
                [
                    [0, 1, 2],
                    [1, 0, 2],
                    [2, 1, 0],
                    [1, 2, 0],
                ]
        )
            Assert.Single(
                SatinStitcher.Stitch(
                    Piece([.. order.Select(i => columns[i])], ColumnGround.Of(columns), [UnderlayKind.Centre])
                )
            );
    }

    /// <summary>Crossing and touching strokes at any angle: no way leaves what the columns cover.</summary>
    [Fact]
    public void AnyStrokesTogetherStayInsideTheirOutline() =>
        Gen.Select(StrokePaths.Cornered.Array[2, 5], Gen.Int[1000, 6000], Underlays)
            .Holds(
                (paths, width, underlay) =>
                {
                    ImmutableArray<Column> columns =
                    [
                        .. paths.SelectMany(p => StrokeColumns.From(p, width, Cap.Butt, Join.Round, 4)),
                    ];
                    var ground = Polygons.Union([
                        ColumnGround.Of(columns),
                        .. paths.Select(p => Polygons.Stroke(p, width, Cap.Butt, Join.Round)),
                    ]);
                    foreach (var block in SatinStitcher.Stitch(Piece(columns, ground, underlay)))
                    {
                        Sewn.AssertSewable(block);
                        Sewn.AssertWithin(Polygons.Offset(ground, Pull + Slack), block);
                    }
                },
                cases: 100
            );

    /// <summary>On the inside of a narrow ring penetrations would crowd: there they spread over the width.</summary>
    [Fact]
    public void StitchesAreShortenedInsideTightCurves()
    {
        var circle = new Polyline([
            .. Enumerable
                .Range(0, 73)
                .Select(i =>
                    Point.FromMillimetres(3 * Math.Cos(i % 72 * Math.PI / 36), 3 * Math.Sin(i % 72 * Math.PI / 36))
                ),
        ]);
        var columns = StrokeColumns.From(circle, 5000, Cap.Butt, Join.Round, 4);
        var ground = Polygons.Stroke(circle, 5000, Cap.Butt, Join.Round);
        var blocks = SatinStitcher.Stitch(Piece(columns, ground, []));
        var inner = blocks
            .SelectMany(b => b.Stitches)
            .Where(s => s.Use == StitchUse.Satin && s.At.DistanceTo(default) < 700)
            .ToList();
        // The outer edge of 34.6 mm has 86 penetrations; all of them inside as well would be one every 0.04 mm.
        Assert.InRange(inner.Count, 10, 45);
        Assert.InRange(Sewn.Covered(ground, blocks, StitchUse.Satin), 0.97, 1);
    }

    private static SatinPiece Piece(
        ImmutableArray<Column> columns,
        Region ground,
        ImmutableArray<UnderlayKind> underlay
    ) =>
        new()
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
                    Pull = Pull,
                    Underlay = underlay,
                },
                Columns = columns,
                Footprint = ground,
            },
            Hooping = 0,
            Columns = columns,
        };
}
