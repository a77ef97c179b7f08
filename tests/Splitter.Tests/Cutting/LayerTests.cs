using System.Text;
using Splitter.Cutting;

namespace Splitter.Tests.Cutting;

/// <summary>How thick it gets where parts meet: on the demo, and on open drawings that the benchmarks plan too.</summary>
public sealed class LayerTests
{
    /// <summary>More pieces of fill or satin than this do not lie on each other because parts overlap.</summary>
    private const int Most = 3;

    /// <summary>
    /// Where a drawing itself stacks up more (a star on a sail on the sea), its parts lie no thicker for the seam.
    /// </summary>
    [Theory]
    [InlineData("lighthouse-bay", 420)]
    [InlineData("sunset", 300)]
    [InlineData("blossom", 400)]
    [InlineData("snail", 300)]
    [InlineData("frog", 400)]
    public void OverlapsStackNoMoreThanThreeLayers(string name, int width)
    {
        var outlook =
            name == "lighthouse-bay" ? Examples.Planned(name, "small") : Pipeline.Plan(RequestFor(name, width)).Value;
        var (plan, drawing) = (outlook.Plans[0], outlook.Job.Drawing);
        var pieces = Cutter.Cut(drawing, plan, outlook.Job.Recipe.Overlap);
        var map = new LayerMap(drawing, pieces);
        var thick = Enumerable
            .Range(0, map.Pieces.Length)
            .Where(spot => map.Pieces[spot] > Math.Max(Most, (int)map.Shapes[spot]))
            .ToList();
        Assert.True(
            thick.Count == 0,
            FormattableString.Invariant(
                $"{LayerMap.Area(thick.Count)} mm², up to {thick.Select(s => map.Pieces[s]).DefaultIfEmpty().Max()} layers: {string.Join("; ", thick.Take(5).Select(s => map.Describe(s, pieces)))}"
            )
        );
        // The lattice sees layers at all: two lie along every seam.
        Assert.Contains(map.Pieces, count => count == 2);
    }

    private static Request RequestFor(string name, int width) =>
        new(
            $"{name}.yaml",
            Encoding.UTF8.GetBytes(
                $$"""
                splitter: 1
                artwork: { file: {{name}}.svg, width: {{width}} mm }
                hoops: [{ name: small, field: 130 x 180 mm }]
                output: { folder: parts }
                """
            ),
            file => new(File.ReadAllBytes(Repository.Path("tests", "Splitter.Benchmarks", "Drawings", file)), null)
        );
}
