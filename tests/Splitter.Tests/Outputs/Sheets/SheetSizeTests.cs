using Splitter.Outputs;
using Splitter.Recipes;

namespace Splitter.Tests.Outputs.Sheets;

public sealed class SheetSizeTests
{
    [Fact]
    public void TheSheetOfTheDemoIsSmallEnoughToSend()
    {
        var made = Examples.Made("lighthouse-bay", "small");
        var set = made.Sets.Single();
        var recipe = made.Job.Recipe;
        var job = made.Job with
        {
            Recipe = recipe with { Output = recipe.Output with { Files = [OutputKind.WorkSheet] } },
        };
        var request = new Request("lighthouse-bay.yaml", new byte[1], _ => default);
        var files = OutputRenderer.Render(request, job, set.Plan, set.Parts, []);
        Assert.InRange(SheetSamples.FileOf(set with { Files = files }).Length, 100_000, 2_000_000);
    }
}
