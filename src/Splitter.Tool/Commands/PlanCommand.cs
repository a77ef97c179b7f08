using System.CommandLine;
using Splitter.Diagnostics;
using Splitter.Outputs;
using Splitter.Tool.Commands.Plans;
using Splitter.Tool.Commands.Watching;

namespace Splitter.Tool.Commands;

/// <summary><c>splitter plan</c>: fields, joins and corners, before anything is stitched.</summary>
internal static class PlanCommand
{
    internal static Command Create(TextWriter output, TextWriter error)
    {
        var recipe = SharedOptions.Recipe();
        var hoop = SharedOptions.Hoop(recipe);
        var picture = SharedOptions.Picture(
            "Also draw the overview: into a folder, for every hoop as .svg and .png, or of one hoop into such a file.",
            "FOLDER|FILE"
        );
        var (format, watch) = (SharedOptions.Format(), SharedOptions.Watch());
        var command = new ExampleCommand(
            "plan",
            "Show fields, sewing order, corners and predicted fit; no stitches.",
            "splitter plan recipes/lighthouse-bay.yaml",
            "splitter plan recipes/lighthouse-bay.yaml --picture /tmp/plans",
            "splitter plan recipes/lighthouse-bay.yaml --hoop large --picture /tmp/plan.png",
            "splitter plan recipes/lighthouse-bay.yaml --watch"
        )
        {
            recipe,
            hoop,
            picture,
            format,
            watch,
        };
        command.SetAction(
            (call, stop) =>
                Watch.Around(
                    call.GetValue(watch),
                    error,
                    async inputs =>
                    {
                        var asked = new PlanCall(
                            new(call.GetRequiredValue(recipe), inputs),
                            call.GetValue(hoop),
                            call.GetValue(picture)
                        );
                        var form = call.GetValue(format);
                        var answer = await Progress.Around(form, error, progress => Run(asked, progress), stop);
                        return answer.Write(form, output, error);
                    },
                    stop
                )
        );
        return command;
    }

    /// <param name="Picture">Where to draw it; null for nowhere.</param>
    private sealed record PlanCall(RecipeFile Recipe, string? Hoop, string? Picture);

    private static Answer Run(PlanCall call, Progress progress)
    {
        // A name that ends like a file of another kind is a mistake; any other is a folder.
        if (call.Picture is { } path && PictureFile.KindOf(path) is null && Path.HasExtension(path))
            return Answer.Wrong([CallProblems.PictureKind(path)]);
        var recipe = call.Recipe;
        progress.Say(recipe.Given);
        var planned =
            from request in recipe.Load(call.Hoop, Environment.ProcessorCount)
            from outlook in Pipeline.Plan(request)
            select outlook;
        var diagnostics = recipe.FromHere(planned.Diagnostics);
        if (!planned.TryGet(out var seen))
            return Answer.Wrong(diagnostics);
        if (call.Picture is { } place && Draw(place, seen) is { } problem)
            return Answer.Wrong([.. diagnostics, problem]);
        var document = PlanDocument.Of(recipe.Given, seen);
        return new(ExitCode.Done, diagnostics) { Text = PlanText.Of(document), Data = document };
    }

    private static Diagnostic? Draw(string place, Outlook seen)
    {
        if (PictureFile.KindOf(place) is { } kind)
            return seen.Plans is [var plan]
                ? PictureFile.Write(place, OutputRenderer.RenderPlan(seen.Job, plan, kind))
                : CallProblems.PictureNeedsOneHoop(place, seen.Plans.Select(p => p.Hoop.Name));
        return seen
            .Plans.SelectMany(plan =>
                OutputRenderer.RenderPlan(seen.Job, plan).Select(file => PictureFile.WriteInto(place, file))
            )
            .FirstOrDefault(problem => problem is not null);
    }
}
