using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Tests.Cutting;

/// <summary>Fills on each other across a seam at x = 50 mm: no more than three pieces of them lie on one spot.</summary>
public sealed class BulkTests
{
    private static readonly FillShape Sea = Samples.Rectangle("sea", 10, 0, 80, 40);
    private static readonly FillShape Hull = Samples.Rectangle("hull", 30, 5, 40, 30);
    private static readonly FillShape Sail = Samples.Rectangle("sail", 40, 10, 20, 20);
    private static readonly FillShape Sun = Samples.Rectangle("sun", 44, 14, 12, 12);

    /// <summary>Along the seam, in the overlap of both parts, and where all four shapes lie.</summary>
    private static readonly Region InSight = Region.Of(new Box(49_600, 15_000, 50_400, 25_000));

    [Theory]
    [InlineData(1, 2)]
    [InlineData(2, 3)]
    [InlineData(3, 3)]
    public void OfSoManyShapesSoManyPiecesLieAtTheSeam(int shapes, int most)
    {
        var pieces = Cut(shapes);
        Assert.Equal(most, new LayerMap(Samples.Drawing(Shapes(shapes)), [.. pieces]).Pieces.Max());
    }

    /// <summary>The uppermost one covers as much misfit as if it were alone.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void WhatLiesOnTopKeepsItsOverlap(int shapes)
    {
        var top = Cut(shapes).Where(p => p.Shape == Shapes(shapes)[^1]).ToList();
        Assert.Equal(2, top.Count);
        Assert.Equal(50_000 + HandPlan.Overlap, top[0].EvenRows.Bounds.Right);
        Assert.Equal(50_000 - HandPlan.Overlap, top[1].OddRows.Bounds.Left);
        Assert.All(top, p => Assert.True(Polygons.Subtract(InSight, Lying(p)).IsEmpty));
    }

    /// <summary>Where one shape of three lies bare, it is sewn by both parts as far as they reach.</summary>
    [Fact]
    public void WhatShowsIsNotTouched()
    {
        var bare = Region.Of(new Box(49_600, 500, 50_400, 4_500));
        Assert.All(
            Cut(3).Where(p => p.Shape == Sea),
            p => Assert.True(Polygons.Subtract(bare, Lying(p)).IsEmpty, p.Hooping.ToString())
        );
    }

    /// <summary>Under two others the lowest one is left out along the seam, and sewn beside it.</summary>
    [Fact]
    public void UnderTwoOthersTheLowestIsLeftOutAlongTheSeam()
    {
        var sea = Cut(3).Where(p => p.Shape == Sea).ToList();
        Assert.All(sea, p => Assert.True(Polygons.Intersect(InSight, Lying(p)).IsEmpty));
        var beside = Region.Of(new Box(42_000, 15_000, 49_000, 25_000));
        Assert.True(Polygons.Subtract(beside, Lying(sea.Single(p => p.Hooping == 0))).IsEmpty);
        Assert.Equal(UnderHull, LeftOut(sea), 0.1);
    }

    /// <summary>Under one other that both parts sew, too: two layers of that cover the cloth.</summary>
    [Fact]
    public void UnderOneOtherNothingLiesAlongTheSeam()
    {
        var sea = Cut(2).Where(p => p.Shape == Sea).ToList();
        Assert.All(sea, p => Assert.True(Polygons.Intersect(InSight, Lying(p)).IsEmpty));
        Assert.Equal(UnderHull, LeftOut(sea), 0.1);
        // Along the other's edges it is sewn to where it is hidden however parts may be off.
        var edges = Region.Of(new Box(49_600, 34_620, 50_400, 34_980));
        Assert.True(Polygons.Subtract(edges, Polygons.Union(sea.Select(Lying))).IsEmpty);
    }

    /// <summary>The strip under the hull, mm²: as far as either part reaches, but for 0.4 mm along its edges.</summary>
    private const double UnderHull = 2 * 0.8 * (30 - (2 * 0.4));

    private static double LeftOut(IEnumerable<FillPiece> sea) =>
        (Sea.Footprint.Area - Polygons.Union(sea.Select(p => p.Core)).Area) / 1e6;

    /// <summary>Of shapes that no seam cuts nothing is left out, however many lie on each other.</summary>
    [Fact]
    public void AwayFromSeamsAllLayersAreThere()
    {
        FillShape[] stack =
        [
            Samples.Rectangle("a", 10, 10, 20, 20),
            Samples.Rectangle("b", 11, 11, 18, 18),
            Samples.Rectangle("c", 12, 12, 16, 16),
            Samples.Rectangle("d", 13, 13, 14, 14),
        ];
        var pieces = Cutter.Cut(Samples.Drawing(stack), HandPlan.Of([null, null, null, null]), new OverlapRules());
        Assert.Equal(stack.Select(s => s.Footprint.Area), pieces.Cast<FillPiece>().Select(p => p.EvenRows.Area));
    }

    /// <summary>A line is too fine to hide what lies under it.</summary>
    [Fact]
    public void UnderALineNothingIsLeftOut()
    {
        var pieces = Cutter.Cut(
            Samples.Drawing(Sea, Samples.Run("line", 35, 20, 65, 20)),
            HandPlan.Of([null, null]),
            new OverlapRules()
        );
        Assert.Equal(Sea.Footprint.Area, pieces.OfType<FillPiece>().Where(p => p.Shape == Sea).Sum(p => p.Core.Area));
    }

    /// <summary>A column that both parts sew counts twice; under it and one fill more there is no third.</summary>
    [Fact]
    public void UnderAColumnThatBothPartsSewOnlyOneFillLies()
    {
        Column column = new([Rung(42), Rung(58)]);
        var band = new SatinShape
        {
            Id = "band",
            Place = new("test.svg", 1, 1),
            Thread = 0,
            Style = new() { RowSpacing = 400 },
            Columns = [column],
            Footprint = Samples.Rectangle("band", 42, 18, 16, 4).Footprint,
        };
        var drawing = Samples.Drawing(Sea, Hull, band);
        var pieces = Cutter.Cut(drawing, HandPlan.Of([null, null, null]), new OverlapRules());
        Assert.Equal(2, pieces.OfType<SatinPiece>().Count());
        Assert.Equal(3, new LayerMap(drawing, pieces).Pieces.Max());

        static Rung Rung(double x) => new(Point.FromMillimetres(x, 18), Point.FromMillimetres(x, 22));
    }

    /// <summary>Where three parts meet, three pieces of the upper fill lie on each other, and nothing under them.</summary>
    [Fact]
    public void WhereThreePartsMeetThereIsRoomForOneFill()
    {
        var all = new Box(0, 0, 100_000, 40_000);
        var plan = HandPlan.Of(
            [null, null],
            (all, all with { Right = 50_000 }),
            (all, all with { Left = 50_000, Bottom = 20_000 }),
            (all, all with { Left = 50_000, Top = 20_000 })
        );
        var drawing = Samples.Drawing(Sea, Hull);
        var pieces = Cutter.Cut(drawing, plan, new OverlapRules());
        Assert.Equal(3, new LayerMap(drawing, pieces).Pieces.Max());
        var meeting = Region.Of(new Box(49_700, 19_700, 50_300, 20_300));
        Assert.All(
            pieces.Cast<FillPiece>().Where(p => p.Shape == Sea),
            p => Assert.True(Polygons.Intersect(meeting, Lying(p)).IsEmpty)
        );
    }

    private static FillShape[] Shapes(int count) => [.. new[] { Sea, Hull, Sail, Sun }.Take(count)];

    private static List<FillPiece> Cut(int count) =>
        [
            .. Cutter
                .Cut(
                    Samples.Drawing(Shapes(count)),
                    HandPlan.Of([.. Enumerable.Repeat<int?>(null, count)]),
                    new OverlapRules()
                )
                .Cast<FillPiece>(),
        ];

    /// <summary>Where every row lies.</summary>
    private static Region Lying(FillPiece piece) => Polygons.Intersect(piece.EvenRows, piece.OddRows);
}
