using System.Collections.Immutable;
using System.Text;
using Splitter.Outputs;

namespace Splitter.Checking;

/// <summary>
/// What a recipe makes now against what is on disk. Files are compared to the byte; where a tape differs, what changed is
/// told as the person at the machine would see it.
/// </summary>
internal static class Checker
{
    /// <summary>A line of the sums: 64 digits, two spaces, the name.</summary>
    private const int NameColumn = 66;

    internal static SetDifferences Check(PartSet set, ReadOutput read)
    {
        var hoop = set.Plan.Hoop.Name;
        var files = ImmutableArray.CreateBuilder<FileDifference>();
        foreach (var file in set.Files)
        {
            if (read(file.Path) is not { } bytes)
                files.Add(new(file.Path, FileState.Missing));
            else if (!bytes.AsSpan().SequenceEqual(file.Bytes.Span))
                files.Add(new(file.Path, FileState.Changed));
        }
        var made = set.Files.Select(f => f.Path).ToHashSet(StringComparer.Ordinal);
        foreach (var path in Listed(hoop, read).Where(p => !made.Contains(p) && read(p) is not null))
            files.Add(new(path, FileState.Extra));
        var before = OldManifest.Read(read($"{hoop}/{ManifestWriter.FileName}"));
        return new(hoop, files.ToImmutable(), Parts(set, before, read));
    }

    /// <summary>
    /// What the run that made the files on disk says it made. Files of the person beside them are none of our business.
    /// </summary>
    private static IEnumerable<string> Listed(string hoop, ReadOutput read) =>
        read($"{hoop}/{SumsWriter.FileName}") is { } sums
            ? Encoding
                .UTF8.GetString(sums)
                .Split('\n')
                .Where(line => line.Length > NameColumn)
                .Select(line => line[NameColumn..])
                .Where(name => name.IndexOfAny(['/', '\\', ':']) < 0)
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal)
                .Select(name => $"{hoop}/{name}")
            : [];

    private static ImmutableArray<PartDifference> Parts(PartSet set, OldManifest before, ReadOutput read)
    {
        var differences = ImmutableArray.CreateBuilder<PartDifference>();
        foreach (var part in set.Parts)
        {
            var path = $"{set.Plan.Hoop.Name}/part-{part.Letter}.dst";
            if (set.Files.FirstOrDefault(f => f.Path == path) is not { } tape || read(path) is not { } bytes)
                continue;
            var old = before.Part(part.Letter);
            if (!bytes.AsSpan().SequenceEqual(tape.Bytes.Span) || !old.Agrees(part))
                differences.Add(PartComparer.Compare(part, old, bytes));
        }
        return differences.ToImmutable();
    }
}
