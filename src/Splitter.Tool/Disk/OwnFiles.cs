using System.Collections.Immutable;
using System.Text.Json;
using Splitter.Outputs;

namespace Splitter.Tool.Disk;

/// <summary>
/// Which files of a folder an earlier run wrote: those that its manifest or its sums list, and these two. Everything
/// else is the person's. Without a manifest of ours, nothing in the folder is ours.
/// </summary>
internal static class OwnFiles
{
    internal const string Manifest = ManifestWriter.FileName;
    internal const string Sums = SumsWriter.FileName;

    internal static ImmutableHashSet<string> Of(IDisk disk, string folder)
    {
        if (Read(disk, folder, Manifest) is not { } manifest || FromManifest(manifest) is not { } names)
            return [];
        var sums = Read(disk, folder, Sums) is { } bytes ? SumsReader.Names(bytes) : [];
        return [Manifest, Sums, .. names.Where(SumsReader.IsPlainName), .. sums];
    }

    private static byte[]? Read(IDisk disk, string folder, string name)
    {
        var file = Path.Combine(folder, name);
        return disk.Kind(file) == EntryKind.File ? disk.Read(file) : null;
    }

    /// <summary>The files of its parts; null when the file is no manifest of ours.</summary>
    private static ImmutableArray<string>? FromManifest(byte[] manifest)
    {
        try
        {
            using var document = JsonDocument.Parse(manifest);
            var root = document.RootElement;
            if (
                root.ValueKind != JsonValueKind.Object
                || !root.TryGetProperty("manifest", out _)
                || !root.TryGetProperty("tool", out var tool)
                || tool.GetProperty("name").GetString() != "splitter"
            )
                return null;
            return
            [
                .. root.GetProperty("parts")
                    .EnumerateArray()
                    .SelectMany(part => part.GetProperty("files").EnumerateArray())
                    .Select(file => file.GetString())
                    .OfType<string>(),
            ];
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException)
        {
            return null;
        }
    }
}
