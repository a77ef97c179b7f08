using System.Collections.Immutable;
using CsCheck;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Seams;

public sealed class DividerTests
{
    private static readonly OverlapRules Hidden = new() { Seams = SeamRule.LeastVisible };
    private static readonly OverlapRules Straight = new() { Seams = SeamRule.Straight };

    [Fact]
    public void TheSeamTakesTheGapBetweenTwoFills()
    {
        // 40 mm of common ground, x 60 to 100; the gap lies at 90 to 94, the middle at 80.
        var division = Divide(
            Hidden,
            Layout(new(0, 0, 100, 100), new(60, 0, 160, 100)),
            Samples.Rectangle("left", -20, 10, 110, 80),
            Samples.Rectangle("right", 94, 10, 90, 80)
        );
        Assert.Equal(0, division.Cost.Cost);
        Assert.Equal(80, division.Cost.StraightCost, 0.5);
        Assert.Empty(division.Crossings);
    }

    [Fact]
    public void TheSeamFollowsTheEdgeBetweenTwoFills()
    {
        // The edge leans from x 70 at the top to x 90 at the bottom.
        var division = Divide(
            Hidden,
            Layout(new(0, 0, 100, 100), new(60, 0, 160, 100)),
            Samples.Fill("left", -20, 0, 70, 0, 90, 100, -20, 100),
            Samples.Fill("right", 70, 0, 190, 0, 190, 100, 90, 100)
        );
        var seam = Assert.Single(division.Seams).Line;
        Assert.All(seam.Points, p => Assert.InRange(p.X, 70_000 + (p.Y * 0.2) - 700, 70_000 + (p.Y * 0.2) + 700));
        // The price of the edge's length, sqrt(100² + 20²) mm, at a quarter.
        Assert.InRange(division.Cost.Cost, 20, 0.25 * 102 * 1.1);
        // Smooth: it turns by a few degrees at most in all.
        Assert.InRange(seam.Points.Length, 2, 8);
    }

    [Fact]
    public void TheSeamGoesRoundAMotifAndTheMotifStaysWhole()
    {
        var motif = Samples.Rectangle("motif", 72, 40, 16, 16) with { KeepWhole = true };
        var division = Divide(
            Hidden,
            Layout(new(0, 0, 100, 100), new(60, 0, 160, 100)),
            Samples.Rectangle("ground", -20, 0, 210, 100),
            motif
        );
        Assert.NotNull(division.Owners[1]);
        var inside = new PathClipping(Polygons.Offset(motif.Footprint, -300));
        Assert.Empty(division.Seams.SelectMany(s => inside.Inside(s.Line)));
    }

    [Fact]
    public void ALineIsCutAtARightAngleRatherThanObliquely()
    {
        // In the middle the line falls steeply, on both sides of it it is level: sin(atan(1/3)) = 0.316.
        var division = Divide(
            Hidden,
            Layout(new(0, 0, 100, 100), new(60, 0, 160, 100)),
            Samples.Run("rope", -20, 20, 70, 20, 90, 80, 190, 80)
        );
        Assert.Equal(SeamPrice.LineCrossing / 0.316, division.Cost.StraightCost, 1);
        // The grid counts crossings; how square they are is up to the shortest way.
        Assert.InRange(division.Cost.Cost, SeamPrice.LineCrossing - 0.1, SeamPrice.LineCrossing * 1.2);
    }

    [Fact]
    public void TheSeamStepsAsideFromALineThatRunsAlongIt()
    {
        var division = Divide(
            Hidden,
            Layout(new(0, 0, 100, 100), new(60, 0, 160, 100)),
            Samples.Run("rope", 80, -20, 80, 60, 190, 60)
        );
        Assert.True(division.Cost.StraightCost > 1000, $"{division.Cost}");
        Assert.Equal(0, division.Cost.Cost);
    }

    [Fact]
    public void PlainGroundKeepsItsStraightSeam()
    {
        var layout = Layout(new(0, 0, 100, 100), new(60, 0, 160, 100));
        var ground = Samples.Rectangle("ground", -20, 0, 210, 100);
        var (hidden, straight) = (Divide(Hidden, layout, ground), Divide(Straight, layout, ground));
        Assert.Equal(straight.Cost, hidden.Cost);
        Assert.Equal(straight.Territories.Select(t => t.Bounds), hidden.Territories.Select(t => t.Bounds));
    }

    /// <summary>Any artwork, two to five fields that share ground in every way.</summary>
    [Fact]
    public void TerritoriesDivideTheGroundAndNeverShowMoreThanStraightOnes() =>
        (
            from grounds in Gen.Select(Gen.Int[0, 120], Gen.Int[0, 120], Gen.Int[60, 110], Gen.Int[60, 110]).Array[2, 5]
            from fills in Gen.Select(Gen.Int[-20, 200], Gen.Int[-20, 200], Gen.Int[3, 150], Gen.Int[3, 150]).Array[1, 8]
            from lines in Gen.Int[0, 220].Array[4, 8]
            select (grounds, fills, lines)
        ).Holds(
            sample =>
            {
                var layout = Layout([
                    .. sample.grounds.Select(g => new Box(g.Item1, g.Item2, g.Item1 + g.Item3, g.Item2 + g.Item4)),
                ]);
                Shape[] shapes =
                [
                    .. sample.fills.Select(
                        (f, i) => Samples.Rectangle($"fill-{i}", f.Item1, f.Item2, f.Item3, f.Item4)
                    ),
                    Samples.Run("line", [.. sample.lines.Take(sample.lines.Length / 2 * 2).Select(v => (double)v)]),
                ];
                var division = Divide(Hidden, layout, shapes);

                var all = Polygons.Union(layout.Grounds.Select(Region.Of)).Area;
                Assert.Equal(all, division.Territories.Sum(t => t.Area), 1.0);
                Assert.Equal(all, Polygons.Union(division.Territories).Area, 1.0);
                foreach (var (territory, ground) in division.Territories.Zip(layout.Grounds))
                    Assert.True(territory.IsEmpty || ground.Contains(territory.Bounds));
                Assert.True(division.Cost.Cost <= division.Cost.StraightCost);
                for (var i = 0; i < shapes.Length; i++)
                {
                    var fits = layout.Grounds.Any(g => g.Contains(shapes[i].Footprint.Bounds));
                    Assert.Equal(fits, division.Owners[i] is not null);
                    if (division.Owners[i] is { } owner)
                        Assert.True(layout.Grounds[owner].Contains(shapes[i].Footprint.Bounds));
                }
                var again = Divide(Hidden, layout, shapes);
                Assert.Equal(division.Territories.SelectMany(t => t.Rings), again.Territories.SelectMany(t => t.Rings));
            },
            cases: 40
        );

    /// <summary>One price function, measured on the seams as they are sewn; straight seams of the demo for comparison.</summary>
    [Fact]
    public void TheCostsOfAPlanAreThoseOfItsSeams()
    {
        var plan = Pipeline.Plan(Repository.Request(Repository.Path("recipes", "faroe-islands.yaml"), "small")).Value;
        var only = Assert.Single(plan.Plans);
        ImmutableArray<Box> grounds = [.. only.Hoopings.Select(h => h.Ground)];
        var cost = SeamPrice.Of(new Surface(plan.Job.Drawing, grounds), only.SeamLines);
        Assert.Equal(only.Seams.Cost, cost, 0.01);
        Assert.True(only.Seams.Cost <= only.Seams.StraightCost);
    }

    /// <param name="millimetres">The grounds of fields.</param>
    private static Layout Layout(params ImmutableArray<Box> millimetres)
    {
        ImmutableArray<Box> grounds =
        [
            .. millimetres.Select(b => new Box(b.Left * 1000, b.Top * 1000, b.Right * 1000, b.Bottom * 1000)),
        ];
        return new(
            [.. grounds.Select(g => new Field(new("test", g.Width, g.Height), g.Centre, Turn.None, 0))],
            grounds,
            1
        );
    }

    private static Division Divide(OverlapRules rules, Layout layout, params Shape[] shapes) =>
        Divider.Divide(rules, Samples.Drawing(shapes), layout);
}
