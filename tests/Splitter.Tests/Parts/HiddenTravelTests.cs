using System.Collections.Immutable;
using System.Text;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Tests.Parts;

/// <summary>A field of one colour that a bar of another, sewn later, divides in two.</summary>
public sealed class HiddenTravelTests
{
    /// <summary>The bar, mm.</summary>
    private const double Left = 30,
        Right = 50;

    private static Part Sewn(string how)
    {
        var recipe = $$"""
            splitter: 1
            artwork:
              shapes:
                - { wkt: "POLYGON ((0 0, 80 0, 80 40, 0 40, 0 0))", id: field, fill: "#14304f" }
                - { wkt: "POLYGON (({{Left}} -5, {{Right}} -5, {{Right}} 45, {{Left}} 45, {{Left}} -5))", id: bar, fill: "#c23b2e" }
              sew: [{ match: { id: bar }, {{how}} }]
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: parts, files: [tape] }
            """;
        return Pipeline
            .Make(new("bar.yaml", Encoding.UTF8.GetBytes(recipe), _ => default))
            .Value.Sets.Single()
            .Parts.Single();
    }

    private static Step FieldOf(Part part) =>
        part.Steps.First(s => s.Kind == StepKind.Body && s.Moves[0].Block.Of == "field");

    [Fact]
    public void TheNeedleGoesOnBelowTheBarInsteadOfATrim()
    {
        var moves = FieldOf(Sewn("as: fill")).Moves;
        Assert.Equal(2, moves.Length);
        Assert.False(moves[1].Trim);
        Assert.Equal(moves[0].Block.End, moves[1].Block.Start);
    }

    /// <summary>Between the two halves, what is sewn is travel; its stitches are short and lie inside the bar's edge.</summary>
    [Fact]
    public void TheWayLiesBelowTheBar()
    {
        var stitches = FieldOf(Sewn("as: fill")).Moves.SelectMany(m => m.Block.Stitches).ToList();
        var (from, to) = (Left * Units.Millimetre, Right * Units.Millimetre);
        var below = stitches.Where(s => s.At.X > from + 2000 && s.At.X < to - 2000).ToList();
        Assert.NotEmpty(below);
        Assert.All(below, s => Assert.Equal(StitchUse.Travel, s.Use));
        Assert.All(
            stitches.Zip(stitches.Skip(1)).Where(pair => pair.Second.Use == StitchUse.Travel),
            pair =>
                Assert.InRange(pair.First.At.DistanceTo(pair.Second.At), 0, Ties.HiddenStitch + StitchRules.GridSlack)
        );
        // The bar's rows are sewn from 5 mm above the field to 5 mm below it.
        Assert.All(below, s => Assert.InRange(s.At.Y, -4500, 44_500));
    }

    [Fact]
    public void OpenRowsHideNothing() =>
        Assert.Contains(FieldOf(Sewn("as: fill, row-spacing: 2 mm")).Moves, m => m.Trim);

    /// <summary>
    /// Travel begins 5 mm beside the rows that will hide it, where no hidden way begins, and crosses ground with three
    /// layers: only what lies below the rows goes another way.
    /// </summary>
    [Fact]
    public void TravelThatBeginsInTheOpenKeepsOffFullGroundFromWhereItIsHidden()
    {
        ImmutableArray<Point> travel = [.. Enumerable.Range(-2, 16).Select(i => Mm(2.5 * i, 10))];
        var block = new Block(
            "field",
            [
                .. travel.Select((p, i) => new Stitch(p, i == 0 ? StitchUse.Underlay : StitchUse.Travel)),
                .. Enumerable
                    .Range(0, 51)
                    .SelectMany(row => new[] { Mm(row % 2 * 40, 0.4 * row), Mm((row + 1) % 2 * 40, 0.4 * row) })
                    .Select(p => new Stitch(p, StitchUse.Fill)),
            ]
        );
        const int most = 3;
        var (ground, layers) = (new HiddenGround([block]), new ThreadGrid(new(-10_000, -10_000, 50_000, 30_000)));
        for (var pass = 0; pass < most; pass++)
        for (var y = 8.2; y < 12; y += 0.4)
            layers.Lay(Mm(15, y), Mm(20, y), ThreadGrid.ThreadWidth);
        for (var i = 1; i < travel.Length; i++)
            layers.Lay(travel[i - 1], travel[i], ThreadGrid.ThreadWidth);

        var spread = new HiddenTravel(new(ground, layers, most), layers, most).Spread(block, 0);

        ImmutableArray<Point> way = [.. spread.Stitches.Where(s => s.Use != StitchUse.Fill).Select(s => s.At)];
        Assert.Equal(travel.Take(2), way.Take(2));
        Assert.Equal(travel[^1], way[^1]);
        Assert.Contains(way, p => p.X is > 15_000 and < 20_000);
        Assert.DoesNotContain(way, p => p.X is > 15_000 and < 20_000 && p.Y is > 8000 and < 12_000);
        Assert.Equal(
            block.Stitches.Where(s => s.Use == StitchUse.Fill),
            spread.Stitches.Where(s => s.Use == StitchUse.Fill)
        );
    }

    /// <summary>
    /// A band as wide as the ground lies between two blocks. Crossed by one thread it has 2.9 layers: more than is kept
    /// to where there is a choice, 2.8, but no more than the cloth bears, 3. With 3.2 the thread is cut.
    /// </summary>
    [Theory]
    [InlineData(0.8, true)]
    [InlineData(0.5, false)]
    public void AWayFromBlockToBlockUsesAllThatTheClothBears(double spacing, bool isFound)
    {
        ImmutableArray<Stitch> rows =
        [
            .. Enumerable
                .Range(0, 51)
                .SelectMany(row => new[] { Mm(row % 2 * 40, 0.4 * row), Mm((row + 1) % 2 * 40, 0.4 * row) })
                .Select(p => new Stitch(p, StitchUse.Fill)),
        ];
        var layers = new ThreadGrid(new(-10_000, -10_000, 50_000, 30_000));
        foreach (var apart in new[] { 0.4, 0.4, spacing })
            for (var y = -5.0; y < 25; y += apart)
                layers.Lay(Mm(15, y), Mm(20, y), ThreadGrid.ThreadWidth);
        var ways = new HiddenWays(new([new("field", rows)]), layers, 3 - Square.Between);

        var way = ways.Find(Mm(5, 10), Mm(35, 10), 0);

        Assert.Equal(isFound, way is not null);
    }

    private static Point Mm(double x, double y) => new((int)Math.Round(x * 1000), (int)Math.Round(y * 1000));
}
