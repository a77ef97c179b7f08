using System.Collections.Immutable;
using System.CommandLine;
using Splitter.Diagnostics;

namespace Splitter.Tool.Commands;

/// <summary><c>splitter plan</c>: fields, joins and corners, before anything is stitched.</summary>
internal static class PlanCommand
{
    internal static Command Create(TextWriter output, TextWriter error)
    {
        var recipe = SharedOptions.Recipe();
        var hoop = SharedOptions.Hoop();
        var format = SharedOptions.Format();
        var command = new ExampleCommand(
            "plan",
            "Show fields, sewing order, corners and predicted fit; no stitches.",
            "splitter plan recipes/lighthouse-bay.yaml",
            "splitter plan recipes/lighthouse-bay.yaml --hoop large"
        )
        {
            recipe,
            hoop,
            format,
        };
        command.SetAction(
            async (call, stop) =>
            {
                var (file, name) = (new RecipeFile(call.GetRequiredValue(recipe)), call.GetValue(hoop));
                var form = call.GetValue(format);
                var answer = await Progress.Around(form, error, progress => Run(file, name, progress), stop);
                return answer.Write(form, output, error);
            }
        );
        return command;
    }

    private static Answer Run(RecipeFile recipe, string? hoop, Progress progress)
    {
        progress.Say(recipe.Given);
        var planned =
            from request in recipe.Load(hoop, Environment.ProcessorCount)
            from outlook in Pipeline.Plan(request)
            select outlook;
        ImmutableArray<Diagnostic> diagnostics = recipe.FromHere(planned.Diagnostics);
        if (!planned.TryGet(out var seen))
            return Answer.Wrong(diagnostics);
        PlanSummary[] plans = [.. seen.Plans.Select(PlanSummary.Of)];
        return new(ExitCode.Done, diagnostics)
        {
            Text = string.Join("\n", plans.Select(plan => plan.ToText())),
            Data = plans,
        };
    }
}
