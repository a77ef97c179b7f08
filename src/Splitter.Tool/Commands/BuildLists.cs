using System.Collections.Immutable;
using Splitter.Diagnostics;

namespace Splitter.Tool.Commands;

/// <summary>
/// What a build tool asks after make: which files were read and which were written, as full paths, one a line. The next
/// build compares their times and leaves alone what nobody touched.
/// </summary>
internal sealed class BuildLists
{
    private readonly NewList inputs;
    private readonly NewList outputs;

    /// <summary>
    /// Before anything is read, so that what is edited from now on is newer than the list of what was read.
    /// </summary>
    internal BuildLists(BatchCall call) => (inputs, outputs) = (new(call.Inputs), new(call.Outputs));

    /// <summary>What was read comes last: while it is missing, a build makes the parts again.</summary>
    internal ImmutableArray<Diagnostic> Write(ImmutableArray<Made> all) =>
        [
            .. outputs.Write(all.SelectMany(FilesWritten)),
            .. inputs.Write(all.SelectMany(made => made.Recipe.FilesRead)),
        ];

    private static IEnumerable<string> FilesWritten(Made made) =>
        made
            .Production.Sets.Zip(made.Folders)
            .SelectMany(pair =>
                pair.First.Files.Select(file =>
                    Path.GetFullPath(Path.Combine(pair.Second.Path, Path.GetFileName(file.Path)))
                )
            );
}
