using System.Text;
using Splitter.Outputs.Sheets;

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
        var planned = Pipeline.Plan(
            new(
                "band.yaml",
                Encoding.UTF8.GetBytes(
                    $$"""
                    splitter: 1
                    artwork: { shapes: [{ wkt: "POLYGON ((0 0, 200 0, 200 160, 0 160, 0 0))", fill: "#14304f" }] }
                    hoops: [{ name: small, field: 130 x 180 mm }]
                    overlap: { seams: straight }
                    registration: { accuracy: {{accuracy}} mm }
                    """
                ),
                _ => default
            )
        );
        Assert.True(planned.Succeeded, string.Join('\n', planned.Diagnostics));
        var (job, plan) = (planned.Value.Job, planned.Value.Plans.Single());
        var join = Assert.Single(plan.Joins);
        var told = JoinToCover.Of(job.Recipe, job.Drawing, plan);
        Assert.NotEmpty(told);
        Assert.Equal(join.AlongSeam, told.Max(place => place.Misfit));
    }
}
