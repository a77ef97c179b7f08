using System.Text;

namespace Splitter.Tool.Disk;

/// <summary>
/// Where the recipe of a set lies: recipes of one name in two folders may be told to write to one place, one after the
/// other. It stands in a file of the set's folder that is none of the set's own, since those have the same bytes
/// wherever they are made.
/// </summary>
internal static class RecipeMark
{
    internal const string Name = ".splitter-recipe";

    /// <summary>No path of a system is longer, in bytes.</summary>
    private const int Longest = 4096;

    /// <summary>From the set's folder, so that both may be moved together.</summary>
    /// <param name="recipe">A full path.</param>
    internal static byte[] Of(SetFolder folder, string recipe) =>
        Encoding.UTF8.GetBytes(
            Path.GetRelativePath(Path.GetFullPath(folder.Path), recipe).Replace(Path.DirectorySeparatorChar, '/') + "\n"
        );

    /// <summary>
    /// Another recipe that is still where it was when the set was made of it; null where the set is this one's, or a
    /// recipe's that has been moved since. Some systems do not tell case apart.
    /// </summary>
    internal static string? Other(IDisk disk, SetFolder folder)
    {
        var mark = Path.Combine(folder.Path, Name);
        if (folder.Recipe is null || disk.Kind(mark) != EntryKind.File)
            return null;
        if (disk.Read(mark, Longest) is not { } bytes)
            return null;
        var relative = Encoding.UTF8.GetString(bytes).TrimEnd('\n');
        if (relative.Length == 0 || relative.Any(char.IsControl))
            return null;
        var there = Path.GetFullPath(Path.Combine(folder.Path, relative));
        return
            !IsSame(there, folder.Recipe)
            && disk.Kind(there) == EntryKind.File
            && !IsSame(WithoutLinks(disk, there), WithoutLinks(disk, folder.Recipe))
            ? there
            : null;
    }

    private static bool IsSame(string one, string other) =>
        string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    /// <summary>Folders alone: a link to a recipe stands beside other artwork.</summary>
    private static string WithoutLinks(IDisk disk, string recipe) =>
        Path.GetDirectoryName(recipe) is { } folder
            ? Path.Combine(disk.WithoutLinks(folder), Path.GetFileName(recipe))
            : recipe;
}
