using System.Collections.Immutable;
using CsCheck;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Seams;
using Splitter.Recipes;
using Splitter.Tests.Planning.Seams;

namespace Splitter.Tests.Outputs;

/// <summary>Seams are shown where they divide something or run over bare cloth, and nowhere else.</summary>
public sealed class SeamStretchesTests
{
    /// <summary>Places this near to an outline may be counted to either side, µm: the 50 that brush an edge, and rounding.</summary>
    private const double NearEdge = 60;

    [Fact]
    public void AFishThatOnePartSewsHidesTheSeamOfTheSeaBelowIt()
    {
        var drawing = Samples.Drawing(
            Samples.Rectangle("sea", 0, 20, 100, 60),
            Samples.Rectangle("fish", 40, 30, 20, 10),
            Samples.Rectangle("sun", 45, 5, 10, 5)
        );
        var seam = new Seam(0, 1, new([Point.FromMillimetres(50, 0), Point.FromMillimetres(50, 100)]));
        var found = SeamStretches.Of(drawing, [null, 1, 0], [seam]);
        double Length(SeamGround ground) => found.Where(s => s.Ground == ground).Sum(s => s.Line.Length);
        Assert.Equal(15_000, Length(SeamGround.Whole), 1.0);
        Assert.Equal(35_000, Length(SeamGround.Bare), 101.0);
        Assert.Equal(50_000, Length(SeamGround.Fill), 101.0);
        Assert.Equal(0, Length(SeamGround.LineWork));
    }

    /// <summary>A run lets the fill show on both its sides: sewn whole it hides nothing, but its place is not bare.</summary>
    [Fact]
    public void ALineThatOnePartSewsLeavesTheSeamBelowItButItsPlaceIsNotBare()
    {
        var drawing = Samples.Drawing(
            Samples.Rectangle("sea", 0, 20, 100, 60),
            Samples.Run("wave", 40, 50, 60, 50),
            Samples.Run("gull", 40, 10, 60, 10)
        );
        var seam = new Seam(0, 1, new([Point.FromMillimetres(50, 0), Point.FromMillimetres(50, 80)]));
        var found = SeamStretches.Of(drawing, [null, 0, 0], [seam]);
        Assert.Equal(60_000, found.Where(s => s.Ground == SeamGround.Fill).Sum(s => s.Line.Length), 101.0);
        var whole = Assert.Single(found, s => s.Ground == SeamGround.Whole);
        Assert.Equal(10_000, whole.Line.Bounds.Centre.Y, 1.0);
    }

    [Fact]
    public void WherePartsDoNotJoinThereIsNoSeam()
    {
        var plan = HandMade.Plan;
        Assert.NotEmpty(SeamStretches.Of(HandMade.Drawing, plan));
        Assert.Empty(SeamStretches.Of(HandMade.Drawing, plan with { Joins = [] }));
    }

    [Fact]
    public void EveryStretchOfRandomArtworkIsWhatLiesOnTop() =>
        (
            from shapes in SeamSamples.Shapes(150, 120).List[1, 20]
            from shared in Gen.Int[8, 25]
            select (Drawing: Samples.Drawing([.. shapes]), Shared: shared * Units.Millimetre)
        ).Holds(
            t =>
            {
                var (left, right) = (new Box(0, 0, 80_000, 120_000), new Box(80_000 - t.Shared, 0, 150_000, 120_000));
                ImmutableArray<Box> grounds = [left, right];
                var fields = grounds.Select(g => new Field(
                    new Hoop("test", g.Width, g.Height),
                    g.Centre,
                    Turn.None,
                    0
                ));
                var layout = new Layout([.. fields], grounds, 2);
                var rules = new OverlapRules { Seams = SeamRule.LeastVisible };
                var division = Divider.Divide(rules, t.Drawing, layout);
                IsWhatLiesOnTop(t.Drawing, division.Owners, division.Seams);
                LieOnCrossings(t.Drawing, division);
            },
            cases: 40
        );

    [Fact]
    public void EveryStretchOfTheDemoIsWhatLiesOnTop()
    {
        var outlook = Examples.Planned("lighthouse-bay", "large");
        var plan = Assert.Single(outlook.Plans);
        var found = IsWhatLiesOnTop(outlook.Job.Drawing, plan.Owners, plan.SeamLines);
        // The fields part sky, satin and bare cloth, and pass motifs: the demo shows every kind.
        Assert.Equal(Enum.GetValues<SeamGround>(), found.Select(s => s.Ground).Distinct().Order());
    }

    private static ImmutableArray<SeamStretch> IsWhatLiesOnTop(
        Drawing drawing,
        ImmutableArray<int?> owners,
        ImmutableArray<Seam> seams
    )
    {
        var found = SeamStretches.Of(drawing, owners, seams);
        Assert.Equal(seams.Sum(s => s.Line.Length), found.Sum(s => s.Line.Length), 10.0 + (2.0 * found.Length));
        foreach (var stretch in found)
        {
            var points = stretch.Line.Points;
            var at = points[0].Towards(points[1], 0.5);
            if (drawing.Shapes.Any(s => IsNearEdge(s.Footprint, at)))
                continue;
            Assert.Equal(OnTop(drawing, owners, at), stretch.Ground);
        }
        return found;
    }

    /// <summary>What the planner says is crossed and what is shown as crossed: the same lines.</summary>
    private static void LieOnCrossings(Drawing drawing, Division division)
    {
        foreach (var stretch in SeamStretches.Of(drawing, division.Owners, division.Seams))
        {
            if (stretch.Ground is not (SeamGround.Fill or SeamGround.LineWork))
                continue;
            var at = stretch.Line.Points[0].Towards(stretch.Line.Points[1], 0.5);
            Assert.Contains(
                division.Crossings,
                c => Polygons.Distance(Polygons.Stroke(c.Line, 10, Cap.Square, Join.Bevel), at) <= 5
            );
        }
    }

    private static SeamGround OnTop(Drawing drawing, ImmutableArray<int?> owners, Point at)
    {
        var there = Enumerable
            .Range(0, drawing.Shapes.Length)
            .Where(i => Polygons.Containment(drawing.Shapes[i].Footprint)(at.X, at.Y))
            .ToList();
        var solid = there.Where(i => owners[i] is null || drawing.Shapes[i] is not RunShape).ToList();
        if (solid.Count == 0)
            return there.Count == 0 ? SeamGround.Bare : SeamGround.Whole;
        var top = solid[^1];
        return owners[top] is not null ? SeamGround.Whole
            : drawing.Shapes[top] is FillShape ? SeamGround.Fill
            : SeamGround.LineWork;
    }

    private static bool IsNearEdge(Region region, Point at) =>
        region.Bounds.Grown((int)NearEdge).Contains(at)
        && region.Rings.Any(r =>
            Polygons.Distance(Polygons.Stroke(new Polyline([.. r.Points, r.Points[0]]), 2, Cap.Butt, Join.Bevel), at)
            <= NearEdge
        );
}
