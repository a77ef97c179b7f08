using System.Collections.Immutable;
using System.Text.Json;
using Splitter.Diagnostics;
using Splitter.Outputs;
using Splitter.Tool.Disk;

namespace Splitter.Tool.Commands;

/// <summary>
/// Corrected parts that lie beside a set and continue a part as it was: a set is replaced as a whole, and they stay.
/// Each names in its manifest the sum of the tape that it was moved from.
/// </summary>
internal static class OldCorrections
{
    internal static ImmutableArray<Diagnostic> Beside(IDisk disk, Made made) =>
        [.. made.Folders.Zip(made.Production.Sets).SelectMany(pair => Beside(disk, pair.First, pair.Second))];

    private static IEnumerable<Diagnostic> Beside(IDisk disk, SetFolder folder, PartSet set)
    {
        var sums = set.Files.ToDictionary(f => f.Path, f => SumsWriter.Sum(f.Bytes.Span), StringComparer.Ordinal);
        foreach (var name in Names(disk, folder.Output))
        {
            var path = Path.Combine(folder.Output, name);
            if (
                disk.Kind(path) == EntryKind.Folder
                && Original(disk, path) is var (part, sum)
                && name == PartFiles.CorrectedFolder(folder.Hoop, part)
                && sums.GetValueOrDefault($"{folder.Hoop}/{PartFiles.Tape(part)}") != sum
            )
                yield return DiskProblems.OldCorrection(path.Replace('\\', '/'), part);
        }
    }

    /// <summary>A folder that may not be listed is no reason to fail: the set itself is done.</summary>
    private static ImmutableArray<string> Names(IDisk disk, string folder)
    {
        try
        {
            return disk.Kind(folder) == EntryKind.Folder ? disk.Names(folder) : [];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    /// <summary>The part that was moved, and its tape's sum; null where no manifest of ours says so.</summary>
    private static (string Part, string Sum)? Original(IDisk disk, string folder)
    {
        var file = Path.Combine(folder, ManifestWriter.FileName);
        if (disk.Kind(file) != EntryKind.File || BoundedFile.Read(file) is not (var bytes, null))
            return null;
        try
        {
            using var manifest = JsonDocument.Parse(bytes);
            var original = manifest.RootElement.GetProperty("correction").GetProperty("original");
            return
                original.GetProperty("part").GetString() is { } part
                && original.GetProperty("sha256").GetString() is { } sum
                ? (part, sum)
                : null;
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException)
        {
            return null;
        }
    }
}
