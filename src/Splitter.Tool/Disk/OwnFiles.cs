using System.Collections.Immutable;
using System.Text.Json;
using Splitter.Outputs;

namespace Splitter.Tool.Disk;

/// <summary>
/// Which files of a folder an earlier run wrote: those that its manifest or its sums list, these two, and the mark of
/// the recipe. Everything else is the person's. Without a manifest of ours, nothing in the folder is ours.
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
        return [Manifest, Sums, RecipeMark.Name, .. names.Where(SumsReader.IsPlainName), .. sums];
    }

    /// <summary>The recipe that a set was made of, as its manifest names it; null without one of ours.</summary>
    internal static string? RecipeOf(IDisk disk, string folder) =>
        Read(disk, folder, Manifest) is { } manifest ? RecipeIn(manifest) : null;

    internal static string? RecipeIn(ReadOnlyMemory<byte> manifest) =>
        Told(manifest, root => root.GetProperty("recipe").GetProperty("file").GetString());

    /// <summary>The hoop that a set was made for, as its manifest names it; null without one of ours.</summary>
    internal static string? HoopOf(IDisk disk, string folder) =>
        Read(disk, folder, Manifest) is { } manifest
            ? Told(manifest, root => root.GetProperty("hoop").GetProperty("name").GetString())
            : null;

    private static byte[]? Read(IDisk disk, string folder, string name)
    {
        var file = Path.Combine(folder, name);
        return disk.Kind(file) == EntryKind.File ? disk.Read(file, PlainFile.Largest) : null;
    }

    /// <summary>The files of its parts.</summary>
    private static string[]? FromManifest(byte[] manifest) =>
        Told(
            manifest,
            root =>
                root.GetProperty("parts")
                    .EnumerateArray()
                    .SelectMany(part => part.GetProperty("files").EnumerateArray())
                    .Select(file => file.GetString())
                    .OfType<string>()
                    .ToArray()
        );

    /// <summary>What a manifest says; null when the file is none of ours.</summary>
    private static T? Told<T>(ReadOnlyMemory<byte> manifest, Func<JsonElement, T?> read)
        where T : class
    {
        try
        {
            using var document = JsonDocument.Parse(manifest);
            var root = document.RootElement;
            return
                root.ValueKind == JsonValueKind.Object
                && root.TryGetProperty("manifest", out _)
                && root.TryGetProperty("tool", out var tool)
                && tool.GetProperty("name").GetString() == "splitter"
                ? read(root)
                : null;
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException)
        {
            return null;
        }
    }
}
