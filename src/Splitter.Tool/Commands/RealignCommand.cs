using System.Collections.Immutable;
using System.CommandLine;
using Splitter.Correcting;
using Splitter.Diagnostics;
using Splitter.Outputs;
using Splitter.Tool.Disk;

namespace Splitter.Tool.Commands;

/// <summary><c>splitter realign</c>: a part that came out beside its place, moved onto the sewn work.</summary>
internal static class RealignCommand
{
    internal static Command Create(TextWriter output, TextWriter error)
    {
        var recipe = SharedOptions.Recipe();
        var hoop = new Option<string?>("--hoop")
        {
            Description = "Which of the recipe's hoops; needed if it has several.",
            HelpName = "NAME",
        };
        hoop.CompletionSources.Add(HoopCompletions.For(recipe));
        var part = new Option<string?>("--part")
        {
            Description = "The letter of the part in the hoop.",
            HelpName = "LETTER",
        };
        var at = new Option<string[]>("--at")
        {
            Description =
                "A corner by its name, or a cross by its number on the work sheet, and how far the new stitch lies "
                + "from the sewn work, as the hoop lies before you. At two corners, or crosses on them, or more.",
            HelpName = "PLACE LENGTH right|left|up|down ...",
            AllowMultipleArgumentsPerToken = true,
        };
        var offsets = new Option<string?>("--offsets")
        {
            Description = "The same from a file, in place of --part and --at.",
            HelpName = "FILE",
        };
        offsets.Validators.Add(SharedOptions.RefuseNothing);
        var folder = SharedOptions.Out();
        var format = SharedOptions.Format();
        var command = new ExampleCommand(
            "realign",
            "Move a part that came out beside its place, to be sewn on in the same hooping.",
            "splitter realign recipes/lighthouse-bay.yaml --hoop small --part D --at A6 0.6 mm right 0.2 mm "
                + "down --at A8 0.5 mm right",
            "splitter realign recipes/lighthouse-bay.yaml --hoop small --offsets examples/offsets/part-D.yaml"
        )
        {
            recipe,
            hoop,
            part,
            at,
            offsets,
            folder,
            format,
        };
        command.SetAction(
            async (call, stop) =>
            {
                var asked = new RealignCall(
                    call.GetRequiredValue(recipe),
                    call.GetValue(hoop),
                    call.GetValue(part),
                    call.GetValue(at) ?? [],
                    call.GetValue(offsets),
                    call.GetValue(folder)
                );
                var form = call.GetValue(format);
                var answer = await Progress.Around(form, error, progress => Run(asked, progress, stop), stop);
                return answer.Write(form, output, error);
            }
        );
        return command;
    }

    /// <param name="Out">Stands for the recipe's own output folder; null for that.</param>
    private sealed record RealignCall(
        string Recipe,
        string? Hoop,
        string? Part,
        string[] At,
        string? Offsets,
        string? Out
    );

    private static Answer Run(RealignCall call, Progress progress, CancellationToken stop)
    {
        var recipe = new RecipeFile(call.Recipe);
        progress.Say(recipe.Given);
        var sewn =
            from asked in Measured(call)
            from request in recipe.Load(call.Hoop, Environment.ProcessorCount)
            from made in Pipeline.MakeOne(request, asked.Place)
            select (asked, request, made);
        if (!sewn.TryGet(out var start))
            return Answer.Wrong(recipe.FromHere(sewn.Diagnostics));
        var (offsets, loaded, set) = start;
        var output = OutputFolder.Of(recipe, set.Job.Recipe.Output, call.Out);
        var disk = new LocalDisk();
        var link = call.Out is null ? OutputFolder.LinkOnTheWay(disk, recipe, set.Job.Recipe.Output) : null;
        if ((link ?? PartOnDisk.Problem(disk, output, set, offsets)) is { } problem)
            return Answer.Wrong([problem]);
        var earlier = new SetFolder(output, PartFiles.CorrectedFolder(set.Sets[0].Hoop, offsets.Part), recipe.FullPath);
        // What there is to say of the recipe, plan and make have said.
        var realigned = Pipeline.Realign(loaded, set, offsets);
        if (!realigned.TryGet(out var corrected))
            return Answer.Wrong([.. realigned.Diagnostics, .. PartOnDisk.Untouched(disk, earlier, offsets.Part)]);
        var summary = CorrectionSummary.Of(recipe.Given, output, corrected);
        if (summary.Folder is null)
            return Done([.. realigned.Diagnostics, .. PartOnDisk.Overtaken(disk, earlier, offsets.Part)], summary);
        ImmutableArray<Diagnostic> said =
        [
            .. realigned.Diagnostics,
            .. PartOnDisk.Replaced(disk, earlier, offsets.Part, corrected.Files),
        ];
        progress.BeginWriting(stop);
        var problems = new SetWriter(disk).Write([(earlier, corrected.Files)], stop);
        return problems.IsEmpty ? Done(said, summary) : Answer.Wrong([.. said, .. problems]);
    }

    private static Answer Done(ImmutableArray<Diagnostic> said, CorrectionSummary summary) =>
        new(ExitCode.Done, said) { Text = summary.ToText(), Data = summary };

    private static Result<PartOffsets> Measured(RealignCall call)
    {
        if (call.Offsets is { } file)
        {
            if (call.Part is not null || call.At.Length > 0)
                return Result.Fail<PartOffsets>(CallProblems.OffsetsTwice());
            var (bytes, problem) = BoundedFile.Read(Path.GetFullPath(file));
            return problem is null
                ? OffsetFile.Read(file, bytes)
                : Result.Fail<PartOffsets>(CallProblems.CannotRead(file, problem));
        }
        if (call.Part is not { } part || call.At.Length == 0)
            return Result.Fail<PartOffsets>(CallProblems.NoOffsets());
        return from offsets in OffsetWords.Read(call.At, CallProblems.Call)
            select new PartOffsets(part, offsets, CallProblems.Call);
    }
}
