using System.Collections.Immutable;
using CsCheck;
using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Tests.Cutting;

/// <summary>Random blobs, hoops and turns: pieces make up the shape, overlap only at seams, and stay in their fields.</summary>
public sealed class CutterTests
{
    /// <summary>
    /// Area that snapping to whole micrometres may add or take where two outlines cross at a flat angle, mm². A hundredth
    /// of a square millimetre is less than one stitch's hole.
    /// </summary>
    private const double AreaTolerance = 0.01;

    private static readonly Gen<FillShape> Blob =
        from radii in Gen.Double[25, 100].Array[5, 24]
        from x in Gen.Double[0, 60]
        from y in Gen.Double[0, 60]
        select Samples.Fill(
            "blob",
            [
                .. radii.SelectMany(
                    (r, i) =>
                        new[]
                        {
                            110 + x + (r * Math.Cos(2 * Math.PI * i / radii.Length)),
                            110 + y + (r * Math.Sin(2 * Math.PI * i / radii.Length)),
                        }
                ),
            ]
        );

    private static readonly Gen<(FillShape Shape, Plan Plan, Recipe Recipe)> Planned =
        from shape in Blob
        from width in Gen.Int[70, 140]
        from height in Gen.Int[70, 190]
        from edges in Gen.Enum<EdgeRule>()
        let recipe = WithEdges(Samples.Recipe(Samples.Hoop(width, height)), edges)
        select (shape, PlanOf(recipe, shape), recipe);

    [Fact]
    public void CoresMakeUpTheShapeAndPiecesOverlapOnlyAtSeams() =>
        Planned.Holds(
            t =>
            {
                var pieces = Pieces(t);
                CoresMakeUpTheShapeWithoutOverlap(t.Shape, [.. pieces.Select(p => p.Core)]);
                PiecesOverlapOnlyWithinTheOverlapOfASeamAndStayInTheirGround(t.Plan, pieces);
            },
            cases: 40
        );

    private static void CoresMakeUpTheShapeWithoutOverlap(FillShape shape, ImmutableArray<Region> cores)
    {
        var union = Polygons.Union(cores);
        Assert.InRange(Mm2(cores.Sum(c => c.Area) - union.Area), -AreaTolerance, AreaTolerance);
        Assert.InRange(Mm2(Polygons.Subtract(shape.Footprint, union).Area), 0, AreaTolerance);
        Assert.InRange(Mm2(Polygons.Subtract(union, shape.Footprint).Area), 0, AreaTolerance);
    }

    private static void PiecesOverlapOnlyWithinTheOverlapOfASeamAndStayInTheirGround(
        Plan plan,
        ImmutableArray<FillPiece> pieces
    )
    {
        foreach (var piece in pieces)
        {
            Assert.True(plan.Hoopings[piece.Hooping].Ground.Contains(piece.EvenRows.Bounds));
            Assert.True(plan.Hoopings[piece.Hooping].Ground.Contains(piece.OddRows.Bounds));
        }
        var widest = plan.Joins.Select(j => j.Overlap).DefaultIfEmpty(0).Max();
        var strips = Polygons.Union(
            plan.SeamLines.SelectMany(s =>
                new[]
                {
                    Polygons.Stroke(s.Line, (2 * widest * Math.Sqrt(2)) + 20, Cap.Square, Join.Mitre),
                    // Where four meet one gives ground to another.
                    Corner(s.Line.Points[0]),
                    Corner(s.Line.Points[^1]),
                }
            )
        );

        Region Corner(Point at) => Region.Of(Box.Around([at]).Grown(4 * widest));

        for (var i = 0; i < pieces.Length; i++)
        for (var j = i + 1; j < pieces.Length; j++)
        {
            var shared = Polygons.Intersect(pieces[i].EvenRows, pieces[j].EvenRows);
            Assert.InRange(Mm2(Polygons.Subtract(shared, strips).Area), 0, AreaTolerance);
        }
    }

    [Fact]
    public void InterleavedRowsAreComplementary()
    {
        var recipe = Samples.Recipe(Samples.Hoop(130, 180));
        var shape = Samples.Rectangle("a", 0, 0, 200, 100);
        var plan = Planner.Plan(new(recipe, Samples.Drawing(shape)), recipe.Hoops[0]).Value;
        var pieces = Cutter.Cut(Samples.Drawing(shape), plan, recipe.Overlap).Cast<FillPiece>().ToArray();
        var join = Assert.Single(plan.Joins);
        var together = join.Overlap * (1 + Overlaps.ShortShare);
        foreach (var rows in new Func<FillPiece, Region>[] { p => p.EvenRows, p => p.OddRows })
        {
            var shared = Polygons.Intersect(rows(pieces[0]), rows(pieces[1]));
            Assert.Equal(together, shared.Bounds.Width, 1.0);
        }
        Assert.NotEqual(pieces[0].EvenRows.Bounds, pieces[0].OddRows.Bounds);
    }

    [Fact]
    public void ARunIsCutPastTheSeamOnBothSides()
    {
        var recipe = Samples.Recipe(Samples.Hoop(130, 180));
        var drawing = Samples.Drawing(Samples.Run("line", 0, 50, 200, 50));
        var plan = Planner.Plan(new(recipe, drawing), recipe.Hoops[0]).Value;
        var pieces = Cutter.Cut(drawing, plan, recipe.Overlap).Cast<RunPiece>().ToArray();
        Assert.Equal(2, pieces.Length);
        var total = pieces.Sum(p => p.Lines.Sum(l => l.Length));
        Assert.Equal(200_000 + (2 * plan.Joins[0].Overlap), total, 2.0);
    }

    [Fact]
    public void AColumnIsCutPastTheSeamAsFarAsTheMisfitNeeds()
    {
        var recipe = Samples.Recipe(Samples.Hoop(130, 180));
        var drawing = Samples.Drawing(
            new SatinShape
            {
                Id = "rope",
                Place = new("test.svg", 1, 1),
                Thread = 0,
                Style = new() { RowSpacing = 400 },
                Columns = [new([new(new(0, 48_000), new(0, 52_000)), new(new(200_000, 48_000), new(200_000, 52_000))])],
                Footprint = Samples.Rectangle("rope", 0, 48, 200, 4).Footprint,
            }
        );
        var plan = Planner.Plan(new(recipe, drawing), recipe.Hoops[0]).Value;
        var pieces = Cutter.Cut(drawing, plan, recipe.Overlap).Cast<SatinPiece>().ToArray();
        var join = Assert.Single(plan.Joins);
        var total = pieces.Sum(p => p.Columns.Sum(c => c.Rungs[0].Middle.DistanceTo(c.Rungs[^1].Middle)));
        Assert.Equal(2, pieces.Length);
        Assert.Equal(200_000 + Overlaps.Together(join.Overlap, recipe.Overlap.Edges), total, 2.0);
    }

    private static Plan PlanOf(Recipe recipe, FillShape shape)
    {
        var result = Planner.Plan(new(recipe, Samples.Drawing(shape)), recipe.Hoops[0]);
        Assert.True(result.Succeeded, string.Join("\n", result.Diagnostics));
        return result.Value;
    }

    private static Recipe WithEdges(Recipe recipe, EdgeRule edges) =>
        recipe with
        {
            Overlap = recipe.Overlap with { Edges = edges },
        };

    private static ImmutableArray<FillPiece> Pieces((FillShape Shape, Plan Plan, Recipe Recipe) t) =>
        [.. Cutter.Cut(Samples.Drawing(t.Shape), t.Plan, t.Recipe.Overlap).Cast<FillPiece>()];

    private static double Mm2(double squareMicrometres) => squareMicrometres / 1e6;
}
