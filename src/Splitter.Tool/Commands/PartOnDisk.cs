using System.Collections.Immutable;
using Splitter.Checking;
using Splitter.Correcting;
using Splitter.Diagnostics;
using Splitter.Outputs;
using Splitter.Tool.Disk;

namespace Splitter.Tool.Commands;

/// <summary>
/// What is in the hoop was sewn from a tape on disk: whether it is the one that would be moved, and what an earlier run
/// has made of it.
/// </summary>
internal static class PartOnDisk
{
    /// <summary>Why the part cannot be moved: there is none such, or on disk it is another.</summary>
    internal static Diagnostic? Problem(IDisk disk, string output, Production made, PartOffsets asked)
    {
        var set = made.Sets[0];
        var folder = Path.Combine(output, set.Hoop);
        var path = Path.Combine(folder, PartFiles.Tape(asked.Part));
        var known = Corrector.Hooping(set.Plan, asked);
        if (!known.Succeeded)
            // A part that was sewn, and that the recipe makes no more.
            return
                asked.Part.All(char.IsAsciiLetterUpper)
                && set.Parts.All(p => p.Letter != asked.Part)
                && disk.Kind(path) == EntryKind.File
                ? CorrectedTapeProblems.OtherTape(path, asked.Part, Change(disk, folder, set))
                : known.Diagnostics[0];
        if (Of(set, PartFiles.Tape(asked.Part)) is not { } expected)
            return CallProblems.NoTape(asked.Part);
        var (bytes, problem) = disk.Kind(path) == EntryKind.File ? BoundedFile.Read(path) : ([], "is not there");
        return problem is not null ? CallProblems.CannotRead(path, problem)
            : bytes.AsSpan().SequenceEqual(expected.Bytes.Span) ? null
            : CorrectedTapeProblems.OtherTape(path, asked.Part, Change(disk, folder, set));
    }

    /// <summary>A corrected tape that lies there from an earlier run, and is not to be sewn now.</summary>
    internal static IEnumerable<Diagnostic> Overtaken(IDisk disk, SetFolder folder, string part) =>
        disk.Kind(folder.Path) == EntryKind.Folder
            ? [CorrectedTapeProblems.EarlierCorrection(Shown(folder), part)]
            : [];

    /// <summary>The same, after a call that was refused.</summary>
    internal static IEnumerable<Diagnostic> Untouched(IDisk disk, SetFolder folder, string part) =>
        disk.Kind(folder.Path) == EntryKind.Folder ? [CorrectedTapeProblems.OfEarlierCall(Shown(folder), part)] : [];

    /// <summary>A corrected tape that is about to be written over by another.</summary>
    internal static IEnumerable<Diagnostic> Replaced(
        IDisk disk,
        SetFolder folder,
        string part,
        ImmutableArray<OutputFile> files
    )
    {
        if (files.FirstOrDefault(f => PartFiles.IsTape(f.Path)) is not { } tape)
            return [];
        var path = Path.Combine(folder.Path, Path.GetFileName(tape.Path));
        return
            disk.Kind(path) == EntryKind.File
            && BoundedFile.Read(path) is (var bytes, null)
            && !bytes.AsSpan().SequenceEqual(tape.Bytes.Span)
            ? [CorrectedTapeProblems.Replaced(Shown(folder), part)]
            : [];
    }

    /// <summary>What changed since the set on disk was made, as far as both manifests tell.</summary>
    private static string? Change(IDisk disk, string folder, PartSet set)
    {
        var path = Path.Combine(folder, ManifestWriter.FileName);
        if (
            disk.Kind(path) != EntryKind.File
            || BoundedFile.Read(path) is not (var bytes, null)
            || Of(set, ManifestWriter.FileName) is not { } now
            || KnownManifest.Read(now.Bytes.ToArray()).Origin is not { } origin
        )
            return null;
        return KnownManifest.Read(bytes).Origin?.ChangedTo(origin);
    }

    private static OutputFile? Of(PartSet set, string name) =>
        set.Files.FirstOrDefault(f => Path.GetFileName(f.Path) == name);

    private static string Shown(SetFolder folder) => folder.Path.Replace('\\', '/');
}
