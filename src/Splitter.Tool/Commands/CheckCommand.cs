using System.CommandLine;
using Splitter.Checking;
using Splitter.Tool.Disk;

namespace Splitter.Tool.Commands;

/// <summary><c>splitter check</c>: the same run as make, compared with what is on disk.</summary>
internal static class CheckCommand
{
    internal static Command Create(TextWriter output, TextWriter error) =>
        BatchCommand.Create(
            "check",
            "Make everything again in memory and compare with what is on disk.",
            writes: false,
            Run,
            output,
            error,
            "splitter check recipes/lighthouse-bay.yaml",
            "splitter check recipes/*.yaml --format json"
        );

    private static Answer Run(BatchCall call, Progress progress, CancellationToken stop)
    {
        var batch = Batch.Make(call, progress, stop);
        if (!batch.TryGet(out var all))
            return Answer.Wrong(batch.Diagnostics);
        progress.Say("comparing");
        var found = new List<CheckedSet>();
        foreach (var made in all)
        foreach (var (set, folder) in made.Production.Sets.Zip(made.Folders))
            try
            {
                found.Add(CheckedSet.Of(folder, set, Checker.Check(set, path => Read(folder, path))));
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return Answer.Wrong([
                    .. batch.Diagnostics,
                    CallProblems.CannotRead(folder.Path, $"cannot be read ({e.Message.TrimEnd('.')})"),
                ]);
            }
        return new(found.TrueForAll(set => set.Same) ? ExitCode.Done : ExitCode.Differences, batch.Diagnostics)
        {
            Text = string.Concat(found.Select(set => set.ToText())),
            Data = found,
        };
    }

    /// <summary>A link is no file of a set, wherever it leads.</summary>
    private static byte[]? Read(SetFolder folder, string path)
    {
        var disk = new LocalDisk();
        var file = Path.Combine(folder.Output, path);
        return disk.Kind(file) == EntryKind.File ? disk.Read(file) : null;
    }
}
