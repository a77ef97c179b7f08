using System.Collections.Immutable;
using Splitter.Diagnostics;

namespace Splitter.Tool.Disk;

/// <summary>
/// Puts a set folder in order after a swap, or after a run that was cut short: afterwards no sibling is left, the
/// folder holds one whole set, and every file of the person's is in it.
/// </summary>
internal static class Recovery
{
    internal static ImmutableArray<Diagnostic> Run(IDisk disk, SetFolder folder)
    {
        if (disk.Kind(folder.Unfinished) == EntryKind.Folder)
            Clear(disk, folder.Unfinished, disk.Names(folder.Unfinished));

        // Cut short between two renames: the old set is whole, and goes back.
        if (disk.Kind(folder.Path) == EntryKind.None && disk.Kind(folder.Aside) == EntryKind.Folder)
            disk.Move(folder.Aside, folder.Path);
        return [.. Merge(disk, folder.Aside, folder.Path), .. Merge(disk, folder.Exchanged, folder.Path)];
    }

    /// <summary>
    /// Moves what is the person's from a sibling to the folder, and deletes the sibling. A sibling that is a new set
    /// has nothing of theirs; one that is the old set may.
    /// </summary>
    private static ImmutableArray<Diagnostic> Merge(IDisk disk, string sibling, string folder)
    {
        if (disk.Kind(sibling) != EntryKind.Folder)
            return [];
        var own = OwnFiles.Of(disk, sibling);
        var names = disk.Names(sibling);
        var theirs = names.Where(name => !IsOwn(disk, sibling, name, own)).ToArray();
        ImmutableArray<Diagnostic> twice =
        [
            .. theirs
                .Where(name => disk.Kind(Path.Combine(folder, name)) != EntryKind.None)
                .Select(name => DiskProblems.TwoOfTheirs(Path.Combine(sibling, name), Path.Combine(folder, name))),
        ];
        if (!twice.IsEmpty)
            return twice;
        if (theirs.Length > 0)
            disk.CreateFolder(folder);
        foreach (var name in theirs)
            disk.Move(Path.Combine(sibling, name), Path.Combine(folder, name));
        Clear(disk, sibling, names.Except(theirs));
        return [];
    }

    /// <summary>A folder with the name of a file of ours is the person's.</summary>
    private static bool IsOwn(IDisk disk, string folder, string name, ImmutableHashSet<string> own) =>
        own.Contains(name) && disk.Kind(Path.Combine(folder, name)) == EntryKind.File;

    /// <summary>The manifest goes last, since it says whose the other files are.</summary>
    private static void Clear(IDisk disk, string folder, IEnumerable<string> names)
    {
        foreach (
            var name in names
                .OrderBy(name => name == OwnFiles.Manifest)
                .ThenBy(name => name == OwnFiles.Sums)
                .ThenBy(name => name, StringComparer.Ordinal)
        )
            disk.Delete(Path.Combine(folder, name));
        disk.Delete(folder);
    }
}
