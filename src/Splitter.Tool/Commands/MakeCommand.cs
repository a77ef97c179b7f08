using System.Collections.Immutable;
using System.CommandLine;
using Splitter.Diagnostics;
using Splitter.Tool.Commands.Watching;
using Splitter.Tool.Disk;

namespace Splitter.Tool.Commands;

/// <summary><c>splitter make</c>: all outputs of all recipes, or nothing.</summary>
internal static class MakeCommand
{
    internal static Command Create(TextWriter output, TextWriter error)
    {
        var (options, format, watch) = (new BatchOptions(), SharedOptions.Format(), SharedOptions.Watch());
        var command = new ExampleCommand(
            "make",
            "Write machine files and manifest, and what else 'output.files' names: work sheet, pictures, template.",
            "splitter make recipes/lighthouse-bay.yaml",
            "splitter make recipes/lighthouse-bay.yaml --out /tmp/bay",
            "splitter make recipes/*.yaml --format json",
            "splitter make recipes/lighthouse-bay.yaml --hoop large --watch"
        )
        {
            options.Recipes,
            options.Hoop,
            options.Out,
            options.Jobs,
            options.Inputs,
            options.Outputs,
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
                        var (batch, form) = (options.Of(call, inputs), call.GetValue(format));
                        var answer = await Progress.Around(form, error, progress => Run(batch, progress, stop), stop);
                        return answer.Write(form, output, error);
                    },
                    stop
                )
        );
        return command;
    }

    private static Answer Run(BatchCall call, Progress progress, CancellationToken stop)
    {
        var lists = new BuildLists(call);
        var batch = Batch.Make(call, progress, stop);
        if (!batch.TryGet(out var all))
            return Answer.Wrong(batch.Diagnostics);
        var disk = new LocalDisk();
        var links = all.Select(made =>
            call.Out is null ? OutputFolder.LinkOnTheWay(disk, made.Recipe, made.Production.Job.Recipe.Output) : null
        );
        ImmutableArray<Diagnostic> problems = [.. links.OfType<Diagnostic>()];
        if (problems.IsEmpty)
        {
            progress.BeginWriting(stop);
            problems = new SetWriter(disk).Write([.. all.SelectMany(Sets)], stop);
        }
        if (problems.IsEmpty)
            problems = lists.Write(all);
        if (!problems.IsEmpty)
            return Answer.Wrong([.. batch.Diagnostics, .. problems]);

        SetSummary[] summaries =
        [
            .. all.SelectMany(made => made.Production.Sets.Zip(made.Folders, (s, f) => SetSummary.Of(made, s, f))),
        ];
        ImmutableArray<Diagnostic> warnings =
        [
            .. batch.Diagnostics,
            .. all.SelectMany(made => OldCorrections.Beside(disk, made)),
            .. all.SelectMany(made => OldHoops.Beside(disk, made)),
        ];
        return new(ExitCode.Done, warnings) { Text = SetSummary.Table(summaries), Data = summaries };
    }

    private static IEnumerable<(SetFolder, ImmutableArray<Outputs.OutputFile>)> Sets(Made made) =>
        made.Folders.Zip(made.Production.Sets, (folder, set) => (folder, set.Files));
}
