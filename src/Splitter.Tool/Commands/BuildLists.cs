using System.Collections.Immutable;
using Splitter.Diagnostics;

namespace Splitter.Tool.Commands;

/// <summary>
/// What a build tool asks after make: which files were read and which were written, as full paths, one a line. The next
/// build compares their times and leaves alone what nobody touched.
/// </summary>
internal static class BuildLists
{
    internal static ImmutableArray<Diagnostic> Write(BatchCall call, ImmutableArray<Made> all) =>
        [
            .. Write(call.Inputs, all.SelectMany(made => made.Recipe.FilesRead)),
            .. Write(call.Outputs, all.SelectMany(FilesWritten)),
        ];

    private static IEnumerable<string> FilesWritten(Made made) =>
        made
            .Production.Sets.Zip(made.Folders)
            .SelectMany(pair =>
                pair.First.Files.Select(file =>
                    Path.GetFullPath(Path.Combine(pair.Second.Path, Path.GetFileName(file.Path)))
                )
            );

    private static IEnumerable<Diagnostic> Write(string? list, IEnumerable<string> paths)
    {
        if (list is null)
            yield break;
        var problem = "";
        try
        {
            // Another build may read or write it at the same time: it is there whole, or as it was.
            var whole = FormattableString.Invariant($"{list}.{Environment.ProcessId}");
            File.WriteAllLines(whole, paths.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
            File.Move(whole, list, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            problem = e.Message;
        }
        if (problem.Length > 0)
            yield return CallProblems.CannotWriteList(list, problem);
    }
}
