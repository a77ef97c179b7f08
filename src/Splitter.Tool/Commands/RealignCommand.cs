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
                "A corner by its name, or a cross on one by its number on the work sheet, and how far the new stitch "
                + "lies from the sewn work, as the hoop lies before you. At two places or more.",
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
        var realigned =
            from offsets in Measured(call)
            from request in recipe.Load(call.Hoop, Environment.ProcessorCount)
            from done in Pipeline.Realign(request, offsets)
            select done;
        var diagnostics = recipe.FromHere(realigned.Diagnostics);
        if (!realigned.TryGet(out var made))
            return Answer.Wrong(diagnostics);
        var output = OutputFolder.Of(recipe, made.Job.Recipe.Output, call.Out);
        var disk = new LocalDisk();
        var link = call.Out is null ? OutputFolder.LinkOnTheWay(disk, recipe, made.Job.Recipe.Output) : null;
        if ((link ?? Changed(disk, output, made)) is { } problem)
            return Answer.Wrong([.. diagnostics, problem]);
        var summary = CorrectionSummary.Of(recipe.Given, output, made);
        if (summary.Folder is not null)
        {
            progress.BeginWriting(stop);
            var problems = new SetWriter(disk).Write(
                [(new SetFolder(output, CorrectionSummary.FolderOf(made)), made.Files)],
                stop
            );
            if (!problems.IsEmpty)
                return Answer.Wrong([.. diagnostics, .. problems]);
        }
        return new(ExitCode.Done, diagnostics) { Text = summary.ToText(), Data = summary };
    }

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

    /// <summary>What is in the hoop was sewn from the tape on disk; it is that one which is moved.</summary>
    private static Diagnostic? Changed(LocalDisk disk, string output, Realigned made)
    {
        var name = PartFiles.Tape(made.Correction.Part.Letter);
        var expected = made.Original.Files.FirstOrDefault(f => Path.GetFileName(f.Path) == name);
        var path = Path.Combine(output, made.Original.Plan.Hoop.Name, name);
        if (expected is null)
            return CallProblems.NoTape(made.Correction.Part.Letter);
        var (bytes, problem) = disk.Kind(path) == EntryKind.File ? BoundedFile.Read(path) : ([], "is not there");
        return problem is not null ? CallProblems.CannotRead(path, problem)
            : bytes.AsSpan().SequenceEqual(expected.Bytes.Span) ? null
            : CorrectionProblems.OtherTape(path, made.Correction.Part.Letter);
    }
}
