using System.Text;
using Splitter.Outputs.Sheets;
using Splitter.Planning;

namespace Splitter.Tests.Outputs.Sheets;

public sealed class JoinToCoverTests
{
    /// <summary>One straight seam through one fill: the sheet says of its worst place what the plan says of the join.</summary>
    [Theory]
    [InlineData("0.9")]
    [InlineData("1.1")]
    [InlineData("1.3")]
    public void TheSheetTellsTheFigureOfThePlan(string accuracy)
    {
        var (job, plan) = Planned("POLYGON ((0 0, 200 0, 200 160, 0 160, 0 0))", accuracy);
        var join = Assert.Single(plan.Joins);
        var told = JoinToCover.Of(job.Recipe, new(job.Drawing, plan));
        Assert.NotEmpty(told);
        Assert.Equal(join.AlongSeam, told.Max(place => place.Misfit));
    }

    /// <summary>
    /// A dark ground of four parts: where three or four of them meet is listed with all of them, and so is the overview's
    /// worst, wherever it lies.
    /// </summary>
    [Fact]
    public void WhereSeveralPartsMeetTheSheetTellsTheFigureOfTheOverview()
    {
        var (job, plan) = Planned("POLYGON ((0 0, 200 0, 200 300, 0 300, 0 0))", "1.0");
        var told = JoinToCover.Of(job.Recipe, new(job.Drawing, plan));
        Assert.Contains(told, place => place.Hides(plan.Joins.MaxBy(j => j.Within95)!));
        Assert.Equal(plan.Joins.Max(j => j.Within95), told.Max(place => place.Misfit));
        var junctions = plan.Joins.Select(j => j.Junction).OfType<Junction>().DistinctBy(j => j.At).ToList();
        Assert.NotEmpty(junctions);
        foreach (var junction in junctions)
        {
            Assert.True(junction.Misfit > 1000);
            var place = Assert.Single(told, p => p.Motif.Contains(junction.At) && p.Parts.Length > 2);
            Assert.Superset(junction.Parts.ToHashSet(), place.Parts.ToHashSet());
            Assert.True(place.Misfit >= junction.Misfit);
        }
    }

    private static (Job Job, Plan Plan) Planned(string ground, string accuracy)
    {
        var planned = Pipeline.Plan(
            new(
                "band.yaml",
                Encoding.UTF8.GetBytes(
                    $$"""
                    splitter: 1
                    artwork: { shapes: [{ wkt: "{{ground}}", fill: "#14304f" }] }
                    hoops: [{ name: small, field: 130 x 180 mm }]
                    overlap: { seams: straight }
                    registration: { accuracy: {{accuracy}} mm }
                    """
                ),
                _ => default
            )
        );
        Assert.True(planned.Succeeded, string.Join('\n', planned.Diagnostics));
        return (planned.Value.Job, planned.Value.Plans.Single());
    }
}
