using System.Text;
using Splitter.Outputs;
using Splitter.Outputs.Tapes;

namespace Splitter.Tests.Stitching.Estimates;

/// <summary>Estimates of a plan against what the finished tapes hold.</summary>
public sealed class PieceEstimateTests
{
    /// <summary>For all parts of a hoop. Measured: 0.6 to 1.3 % on the demos, 0.2 to 2.2 % on the other drawings.</summary>
    private const double Bound = 0.03;

    /// <summary>For one part of at least <see cref="Counted"/> stitches. Measured: at most 4.2 %.</summary>
    private const double PartBound = 0.07;

    private const int Counted = 2000;

    [Theory]
    [InlineData("lighthouse-bay", "small")]
    [InlineData("lighthouse-bay", "large")]
    [InlineData("faroe-islands", "small")]
    [InlineData("faroe-islands", "large")]
    public void TheDemosAreEstimatedWithinTheBound(string recipe, string hoop) => Compare(Examples.Made(recipe, hoop));

    /// <summary>Open drawings, and no figure of the estimate was measured on them.</summary>
    [Theory]
    [InlineData("owl")]
    [InlineData("rabbit")]
    [InlineData("lemon")]
    [InlineData("goldfish")]
    public void OtherDrawingsAreToo(string drawing)
    {
        var recipe = $$"""
            splitter: 1
            artwork: { file: {{drawing}}.svg, width: 300 mm }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: parts, files: [tape] }
            """;
        var folder = Repository.Path("tests", "Splitter.Benchmarks", "Drawings");
        Compare(
            Pipeline
                .Make(
                    new(
                        $"{drawing}.yaml",
                        Encoding.UTF8.GetBytes(recipe),
                        path => new(File.ReadAllBytes(Path.Combine(folder, path)), null)
                    )
                )
                .Value
        );
    }

    private static void Compare(Production made)
    {
        var set = made.Sets.Single();
        var estimates = HoopingEstimate.Of(made.Job.Recipe, made.Job.Drawing, set.Plan);
        var tapes = set.Parts.Select(part => PartFigures.Of(made.Job.Recipe, part, PartTape.Of(part, "test"))).ToList();
        Within(Bound, estimates.Sum(e => e.Stitches), tapes.Sum(t => t.Counts.Stitches));
        Within(Bound, estimates.Sum(e => e.Minutes), tapes.Sum(t => t.Minutes));
        foreach (var (estimate, tape) in estimates.Zip(tapes))
        {
            Assert.Equal(tape.Counts.Stops, estimate.Stops);
            if (tape.Counts.Stitches >= Counted)
                Within(PartBound, estimate.Stitches, tape.Counts.Stitches);
        }
    }

    private static void Within(double share, double estimated, double counted) =>
        Assert.InRange(estimated, counted * (1 - share), counted * (1 + share));
}
