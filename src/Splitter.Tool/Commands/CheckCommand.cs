using System.Collections.Immutable;
using System.CommandLine;
using Splitter.Checking;
using Splitter.Diagnostics;
using Splitter.Tool.Commands.Comparing;
using Splitter.Tool.Disk;

namespace Splitter.Tool.Commands;

/// <summary><c>splitter check</c>: the same run as make, compared with what is on disk.</summary>
internal static class CheckCommand
{
    internal static Command Create(TextWriter output, TextWriter error)
    {
        var (options, format) = (new BatchOptions(), SharedOptions.Format(withSarif: true));
        var (pictures, stitchesOnly, allLines) = (
            Comparison.Pictures(),
            Comparison.StitchesOnly(),
            Comparison.AllLines()
        );
        var command = new ExampleCommand(
            "check",
            "Make everything again in memory and compare with what is on disk.",
            "splitter check recipes/lighthouse-bay.yaml",
            "splitter check recipes/lighthouse-bay.yaml --hoop small --pictures /tmp/changes",
            "splitter check recipes/*.yaml --format sarif --stitches-only"
        )
        {
            options.Recipes,
            options.Hoop,
            options.Out,
            options.Jobs,
            pictures,
            stitchesOnly,
            allLines,
            format,
        };
        command.SetAction(
            async (call, stop) =>
            {
                var (batch, form) = (options.Of(call), call.GetValue(format));
                var (folder, only, lines) = (
                    call.GetValue(pictures),
                    call.GetValue(stitchesOnly),
                    call.GetValue(allLines)
                );
                var answer = await Progress.Around(
                    form,
                    error,
                    progress => Run(batch, folder, only, lines, progress, stop),
                    stop
                );
                return answer.Write(form, output, error);
            }
        );
        return command;
    }

    private static Answer Run(
        BatchCall call,
        string? pictures,
        bool stitchesOnly,
        bool allLines,
        Progress progress,
        CancellationToken stop
    )
    {
        var batch = Batch.Make(call, progress, stop);
        if (!batch.TryGet(out var all))
            return Answer.Wrong(batch.Diagnostics);
        progress.Say("comparing");
        var found = ImmutableArray.CreateBuilder<Compared>();
        foreach (var made in all)
        foreach (var (set, folder) in made.Production.Sets.Zip(made.Folders))
            try
            {
                found.Add(Compare(made, set, folder));
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return Answer.Wrong([
                    .. batch.Diagnostics,
                    CallProblems.CannotRead(folder.Path, $"cannot be read ({e.Message.TrimEnd('.')})"),
                ]);
            }
        ImmutableArray<Diagnostic> warnings =
        [
            .. batch.Diagnostics,
            .. all.SelectMany(made => OldCorrections.Beside(new LocalDisk(), made)),
            .. all.SelectMany(made => OldHoops.Beside(new LocalDisk(), made)),
        ];
        return Comparison.Answer(found.ToImmutable(), warnings, pictures, stitchesOnly, allLines, isCheck: true);
    }

    private static Compared Compare(Made made, PartSet set, SetFolder folder)
    {
        var old = SetSide.OnDisk(folder.Hoop, path => Comparison.ReadFile(Path.Combine(folder.Output, path)));
        var recipe = made.Production.Job.Recipe;
        var now = SetSide.Of(set);
        var found = Checker.Compare(old, now);
        var hoop = recipe.Hoops.IndexOf(set.Plan.Hoop);
        var place = recipe.PlaceOf(FormattableString.Invariant($"hoops[{hoop}]"));
        return new(
            old,
            now,
            ComparedSet.Of(folder.Path, set.Files.Length, found, isCheck: true),
            [
                .. Finding
                    .Of(found, isCheck: true, made.Recipe.FromHere(place), made.Production.Job.Drawing)
                    .Select(f => f with { Artwork = f.Artwork is { } drawn ? made.Recipe.FromHere(drawn) : null }),
            ]
        );
    }
}
