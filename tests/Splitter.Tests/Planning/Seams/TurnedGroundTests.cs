using System.Collections.Immutable;
using System.Numerics;
using CsCheck;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

/// <summary>Two fields, 60 x 40 mm together, share the middle 40 mm.</summary>
public sealed class TurnedGroundTests
{
    private static readonly ImmutableArray<Box> Grounds = [new(0, 0, 50_000, 40_000), new(10_000, 0, 60_000, 40_000)];

    /// <summary>Half a place, mm: an edge of a shape may be wrong by that all along.</summary>
    private const double HalfAPlace = 1.5 / LayerMap.Parts / 2;

    [Fact]
    public void SharesOfCellsAddUpToWhatLiesOnEachOther() =>
        (
            from one in SeamSamples.Shapes(60, 40)
            from other in SeamSamples.Shapes(60, 40)
            select Samples.Drawing(one, other)
        ).Holds(
            drawing =>
            {
                var grid = new SeamGrid(Grounds);
                var layers = new LayerMap(grid, drawing, _ => false);
                var area = 0.0;
                for (var cell = 0; cell < grid.CellCount; cell++)
                    foreach (var (upper, lower, places) in layers.Pairs(cell))
                    {
                        Assert.Equal((1, 0), (upper, lower));
                        area += grid.Width(cell) * grid.Height(cell) * BitOperations.PopCount(places) / LayerMap.Places;
                    }
                var inside = Region.Of(Box.Around(Grounds));
                var exact = Polygons.Intersect(
                    Polygons.Intersect(drawing.Shapes[0].Footprint, drawing.Shapes[1].Footprint),
                    inside
                );
                Assert.InRange((area - exact.Area) / 1e6, -Doubt(drawing), Doubt(drawing));
            },
            cases: 60
        );

    /// <summary>Of many shapes on each other the topmost are looked at, each with all of them below it.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(LayerMap.Deepest)]
    [InlineData(LayerMap.Deepest + 8)]
    public void OfAPileTheTopmostArePaired(int count)
    {
        var pile = Enumerable.Range(0, count).Select(i => (Shape)Samples.Rectangle($"s{i}", 20, 10, 20, 20)).ToArray();
        var grid = new SeamGrid(Grounds);
        var cell = grid.CellAt(grid.ColumnOf(30_000), grid.RowOf(20_000));
        var pairs = new LayerMap(grid, Samples.Drawing(pile), _ => false).Pairs(cell).ToList();
        var lowest = Math.Max(0, count - LayerMap.Deepest);
        var expected =
            from upper in Enumerable.Range(lowest, count - lowest)
            from lower in Enumerable.Range(lowest, upper - lowest)
            select (upper, lower, ulong.MaxValue);
        Assert.Equal(expected.Order(), pairs.Order());
    }

    /// <summary>
    /// A thousand lines across all fields are cut, and at any place one hooping sews all of them: where nothing else lies
    /// nothing is noted of them, and beside a dot that stays whole those in its cells.
    /// </summary>
    [Fact]
    public void OfWhatIsCutOnlyWhatLiesByWholesIsNoted()
    {
        var lines = Enumerable.Range(0, 1000).Select(i => (Shape)Samples.Rectangle($"l{i}", -1, i * 0.04, 62, 0.3));
        var grid = new SeamGrid(Grounds);
        var drawing = Samples.Drawing([.. lines, Samples.Rectangle("dot", 30, 20, 0.2, 0.2)]);
        Assert.Equal(0, new LayerMap(grid, drawing with { Shapes = drawing.Shapes[..^1] }, _ => true).Count);
        // Lines whose cells are the dot's, and their neighbours, all along: a tenth of all.
        var noted = new LayerMap(grid, drawing, shape => shape < 1000);
        Assert.InRange(noted.Count, 1, new LayerMap(grid, drawing, _ => false).Count / 8);
    }

    /// <summary>Pairs with a shape that stays whole are those that there are when all are looked at.</summary>
    [Fact]
    public void PairsWithWholesAreAllFound() =>
        (
            from shapes in SeamSamples.Shapes(60, 40).Array[2, 12]
            from cut in Gen.Bool.Array[12]
            select (Samples.Drawing(shapes), cut)
        ).Holds(
            t =>
            {
                var grid = new SeamGrid(Grounds);
                var (some, all) = (new LayerMap(grid, t.Item1, i => t.cut[i]), new LayerMap(grid, t.Item1, _ => false));
                for (var cell = 0; cell < grid.CellCount; cell++)
                    Assert.Equal(all.Pairs(cell).Where(p => !t.cut[p.Upper] || !t.cut[p.Lower]), some.Pairs(cell));
            },
            cases: 40
        );

    [Fact]
    public void TwoWaysBetweenTheSameEndsDifferByTheGroundThatTurns() =>
        (
            from x in Gen.Int[11, 41]
            from y in Gen.Int[1, 31]
            from way in Gen.Int[10_000, 50_000].Array[3]
            from other in Gen.Int[10_000, 50_000].Array[3]
            from owner in Gen.Int[0, 1]
            from down in Gen.Bool
            select (x, y, way, other, owner, down)
        ).Holds(
            t =>
            {
                var drawing = Samples.Drawing(
                    Samples.Rectangle("sky", 0, 0, 60, 40),
                    Samples.Rectangle("star", t.x, t.y, 8, 8)
                );
                var grid = new SeamGrid(Grounds);
                ImmutableArray<int?> owners = [null, t.owner];
                // As one walks down, the left field is on the right.
                var ground = new TurnedGround(
                    grid,
                    new LayerMap(grid, drawing, _ => false),
                    owners,
                    t.down ? 0 : 1,
                    t.down ? 1 : 0,
                    Grounds[0].Common(Grounds[1])
                );
                var along = Along(t.way) - Along(t.other);
                var exact = Turned(t.way) - Turned(t.other);
                Assert.InRange(along - exact, -SeamPrice.Turned * Doubt(drawing), SeamPrice.Turned * Doubt(drawing));

                double Along(int[] by)
                {
                    var places = t.down ? Way(by) : [.. Way(by).Reverse()];
                    return places.Zip(places.Skip(1)).Sum(leg => ground.Of(leg.First, leg.Second));
                }

                double Turned(int[] by) =>
                    TurnedLayers
                        .Find(
                            drawing,
                            [
                                Side([new(0, 0)], by, [new(0, 40_000)]),
                                Side([new(60_000, 0)], by, [new(60_000, 40_000)]),
                            ],
                            owners
                        )
                        .Sum(l => l.Area)
                    * SeamPrice.Turned
                    / 1e6;
            },
            cases: 60
        );

    private static ImmutableArray<Point> Way(int[] by) =>
        [new(30_000, 0), new(by[0], 10_000), new(by[1], 20_000), new(by[2], 30_000), new(30_000, 40_000)];

    private static Region Side(Point[] before, int[] by, Point[] after) =>
        Polygons.FromRings([new Ring([.. before, .. Way(by), .. after])], FillRule.EvenOdd);

    /// <summary>Square millimetres.</summary>
    private static double Doubt(Drawing drawing) =>
        drawing.Shapes.Sum(s => s.Footprint.Rings.Sum(r => r.ToPolyline().Length)) / Units.Millimetre * HalfAPlace;
}
