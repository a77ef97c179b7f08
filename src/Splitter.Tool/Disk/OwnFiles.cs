using System.Collections.Immutable;
using System.Text;
using System.Text.Json;

namespace Splitter.Tool.Disk;

/// <summary>
/// Which files of a folder an earlier run wrote: those that its manifest or its sums list, and these two. Everything
/// else is the person's. Without a manifest of ours, nothing in the folder is ours.
/// </summary>
internal static class OwnFiles
{
    internal const string Manifest = "manifest.json";
    internal const string Sums = "SHA256SUMS";

    /// <summary>A line of <see cref="Sums"/>: 64 digits, two spaces, the name.</summary>
    private const int NameColumn = 66;

    internal static ImmutableHashSet<string> Of(IDisk disk, string folder)
    {
        if (Text(disk, folder, Manifest) is not { } manifest || FromManifest(manifest) is not { } names)
            return [];
        var sums = Text(disk, folder, Sums) is { } lines ? FromSums(lines) : [];
        return [Manifest, Sums, .. names.Concat(sums).Where(IsPlainName)];
    }

    private static string? Text(IDisk disk, string folder, string name)
    {
        var file = Path.Combine(folder, name);
        return disk.Kind(file) == EntryKind.File ? Encoding.UTF8.GetString(disk.Read(file)) : null;
    }

    /// <summary>The files of its parts; null when the file is no manifest of ours.</summary>
    private static ImmutableArray<string>? FromManifest(string text)
    {
        try
        {
            using var document = JsonDocument.Parse(text);
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

    private static IEnumerable<string> FromSums(string text) =>
        text.Split('\n').Where(line => line.Length > NameColumn).Select(line => line[NameColumn..]);

    /// <summary>A list that was tampered with must not lead out of the folder.</summary>
    private static bool IsPlainName(string name) =>
        name.Length > 0 && name is not ("." or "..") && name.IndexOfAny(['/', '\\', ':']) < 0;
}
