using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Outputs;

namespace Splitter.Tool.Disk;

/// <summary>
/// Replaces sets of files as wholes. A new set is first written to a sibling folder, which gets its second name when it
/// is complete; then it changes places with the old set; then files of the person's move over from the old set, and the
/// rest of that is deleted. Cut short at any step, there is the old set or the new one, and
/// <see cref="Recovery"/> puts the rest in order on the next run.
/// </summary>
internal sealed class SetWriter(IDisk disk)
{
    /// <summary>
    /// Writes all sets whole before the first takes its place: one that cannot be written leaves every old set. Should
    /// a rename fail after that, its set stays old or is put in order by the next run, while earlier ones are new.
    /// </summary>
    internal ImmutableArray<Diagnostic> Write(
        IReadOnlyList<(SetFolder Folder, ImmutableArray<OutputFile> Files)> sets,
        CancellationToken stop
    )
    {
        var held = new List<(SetFolder Folder, IDisposable Lock)>();
        var staged = false;
        try
        {
            var problems = ImmutableArray.CreateBuilder<Diagnostic>();
            foreach (var (folder, files) in sets)
            {
                problems.AddRange(Stage(folder, files, held, stop));
                // The other run comes to the same folders in the same order: this one leaves it those that follow, or
                // each could keep one from the other, and neither would write.
                if (problems.Any(DiskProblems.IsAnotherRun))
                    break;
            }
            staged = problems.Count == 0;
            // From here on it is a matter of a few renames, and it is not stopped any more.
            return staged ? [.. sets.SelectMany(s => Commit(s.Folder))] : problems.ToImmutable();
        }
        finally
        {
            foreach (var (folder, hold) in held)
            {
                if (!staged)
                    DropStaged(folder);
                hold.Dispose();
            }
        }
    }

    private ImmutableArray<Diagnostic> Stage(
        SetFolder folder,
        ImmutableArray<OutputFile> files,
        List<(SetFolder Folder, IDisposable Lock)> held,
        CancellationToken stop
    )
    {
        try
        {
            if (Obstacle(folder) is { } obstacle)
                return [obstacle];
            disk.CreateFolder(folder.Output);
            if (disk.TryLock(folder.Lock) is not { } hold)
                return [DiskProblems.AnotherRun(folder.Path)];
            held.Add((folder, hold));
            if (Recovery.Run(disk, folder) is { IsEmpty: false } left)
                return left;
            if (OtherRecipe(folder, files) is { } other)
                return [other];
            if (Theirs(folder, files) is { IsEmpty: false } theirs)
                return theirs;
            disk.CreateFolder(folder.Unfinished);
            if (folder.Recipe is { } recipe)
                disk.Write(Path.Combine(folder.Unfinished, RecipeMark.Name), RecipeMark.Of(folder, recipe));
            foreach (var file in files)
            {
                stop.ThrowIfCancellationRequested();
                disk.Write(Path.Combine(folder.Unfinished, NameIn(folder, file)), file.Bytes.Span);
            }
            disk.Move(folder.Unfinished, folder.Exchanged);
            return [];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [DiskProblems.CannotWrite(folder.Path, e.Message)];
        }
    }

    private ImmutableArray<Diagnostic> Commit(SetFolder folder)
    {
        try
        {
            Swap(folder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            DropStaged(folder);
            return [DiskProblems.CannotWrite(folder.Path, e.Message)];
        }
        try
        {
            return Recovery.Run(disk, folder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [DiskProblems.OldSetNotCleared(folder.Exchanged, e.Message)];
        }
    }

    private void Swap(SetFolder folder)
    {
        if (disk.Kind(folder.Path) == EntryKind.None)
            disk.Move(folder.Exchanged, folder.Path);
        else if (!disk.TryExchange(folder.Path, folder.Exchanged))
        {
            disk.Move(folder.Path, folder.Aside);
            disk.Move(folder.Exchanged, folder.Path);
        }
    }

    /// <summary>What stands where folders of ours should; a link could lead anywhere.</summary>
    private Diagnostic? Obstacle(SetFolder folder)
    {
        foreach (var path in new[] { folder.Path, folder.Unfinished, folder.Exchanged, folder.Aside })
            switch (disk.Kind(path))
            {
                case EntryKind.Link:
                    return DiskProblems.IsALink(path);
                case EntryKind.File:
                    return DiskProblems.NotAFolder(path);
                default:
                    break;
            }
        return disk.Kind(folder.Lock) == EntryKind.Link ? DiskProblems.IsALink(folder.Lock) : null;
    }

    /// <summary>
    /// A copy of a recipe, changed to try something, names the folder of the first: its parts may be on the machine by
    /// now, and new ones do not meet what is sewn of them. So may one of the same name in another folder.
    /// </summary>
    private Diagnostic? OtherRecipe(SetFolder folder, ImmutableArray<OutputFile> files)
    {
        if (
            disk.Kind(folder.Path) != EntryKind.Folder
            || OwnFiles.RecipeOf(disk, folder.Path) is not { } there
            || files.FirstOrDefault(f => NameIn(folder, f) == OwnFiles.Manifest) is not { } manifest
            || OwnFiles.RecipeIn(manifest.Bytes) is not { } here
        )
            return null;
        return there != here ? DiskProblems.OtherRecipe(folder.Path, there, here)
            : RecipeMark.Other(disk, folder) is { } other ? DiskProblems.OtherRecipe(folder.Path, other, folder.Recipe!)
            : null;
    }

    /// <summary>Files of the person's that the new set would replace. Some systems do not tell case apart.</summary>
    private ImmutableArray<Diagnostic> Theirs(SetFolder folder, ImmutableArray<OutputFile> files)
    {
        if (disk.Kind(folder.Path) == EntryKind.None)
            return [];
        var own = OwnFiles.Of(disk, folder.Path);
        var next = files.Select(f => NameIn(folder, f)).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return
        [
            .. disk.Names(folder.Path)
                .Where(next.Contains)
                .Select(name => (Name: name, Path: Path.Combine(folder.Path, name)))
                .Where(f => !own.Contains(f.Name) || disk.Kind(f.Path) != EntryKind.File)
                .Select(f => DiskProblems.FileOfTheirs(f.Path)),
        ];
    }

    /// <summary>After a failure: as much order as can be made now; the next run makes the rest.</summary>
    private void DropStaged(SetFolder folder)
    {
        try
        {
            if (Obstacle(folder) is null)
                _ = Recovery.Run(disk, folder);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The failure itself has been told; what is left is found again by its name.
        }
    }

    private static string NameIn(SetFolder folder, OutputFile file) =>
        file.Path.Split('/') is [var hoop, var name] && hoop == folder.Hoop
            ? name
            : throw new InvalidOperationException($"'{file.Path}' is no file of hoop '{folder.Hoop}'.");
}
