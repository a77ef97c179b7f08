using Splitter.Diagnostics;
using Splitter.Recipes;
using Splitter.Tool.Disk;

namespace Splitter.Tool.Commands;

/// <summary>Where a recipe's files go.</summary>
internal static class OutputFolder
{
    /// <summary>From where the person is, as the recipe or the person wrote it.</summary>
    internal static string Of(RecipeFile recipe, OutputRules rules, string? instead) =>
        instead ?? Simplified(Path.GetDirectoryName(recipe.Given) ?? "", rules.Folder);

    /// <summary>
    /// A link on the way that the recipe names, which could lead out of the recipe's own tree. What stands above the
    /// recipe, or in '--out', is the person's own choice.
    /// </summary>
    internal static Diagnostic? LinkOnTheWay(IDisk disk, RecipeFile recipe, OutputRules rules)
    {
        var folder = recipe.Folder;
        foreach (var step in rules.Folder.Split('/'))
        {
            folder = Path.GetFullPath(Path.Combine(folder, step));
            if (step != ".." && disk.Kind(folder) == EntryKind.Link)
                return DiskProblems.IsALink(folder);
        }
        return null;
    }

    /// <summary>recipes/ and ../parts are parts, for a table that is easy to read.</summary>
    private static string Simplified(string folder, string below)
    {
        while (below.StartsWith("../", StringComparison.Ordinal) && Path.GetFileName(folder) is { Length: > 0 } last)
        {
            if (last is "." or "..")
                break;
            folder = Path.GetDirectoryName(folder) ?? "";
            below = below[3..];
        }
        return Path.Combine(folder, below).Replace('\\', '/');
    }
}
