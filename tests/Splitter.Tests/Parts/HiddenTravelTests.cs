using System.Text;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Stitching;

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
}
