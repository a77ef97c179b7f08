using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Tool.Disk;

namespace Splitter.Tool.Commands;

/// <summary>
/// Sets, and corrected parts, for hoops that have been struck from the recipe: nobody makes them again, and whoever
/// loads a tape of one sews the work as it was.
/// </summary>
internal static class OldHoops
{
    internal static IEnumerable<Diagnostic> Beside(IDisk disk, Made made) =>
        made
            .Folders.Select(folder => folder.Output)
            .Distinct(StringComparer.Ordinal)
            .SelectMany(output => In(disk, output, made));

    /// <summary>A folder that may not be read is no reason to fail: the set itself is done.</summary>
    private static ImmutableArray<Diagnostic> In(IDisk disk, string output, Made made)
    {
        var recipe = Path.GetFileName(made.Recipe.Given);
        try
        {
            return disk.Kind(output) != EntryKind.Folder
                ? []
                :
                [
                    .. from name in disk.Names(output)
                    let path = Path.Combine(output, name)
                    // What begins with a point is a set that is being replaced.
                    where !name.StartsWith('.') && disk.Kind(path) == EntryKind.Folder
                    where OwnFiles.RecipeOf(disk, path) == recipe
                    where RecipeMark.Other(disk, new(output, name, made.Recipe.FullPath)) is null
                    let hoop = OwnFiles.HoopOf(disk, path)
                    where hoop is not null && made.Production.Job.Recipe.Hoops.All(h => h.Name != hoop)
                    select DiskProblems.OldHoop(path.Replace('\\', '/'), hoop, recipe),
                ];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }
}
