using System.Collections.Concurrent;

namespace Splitter.Tool.Commands.Watching;

/// <summary>The files that a run looked at, also in vain, and what they were like just before.</summary>
internal sealed class InputFiles
{
    /// <summary>What tells that a file was written; nulls when it is not there.</summary>
    private readonly record struct Look(DateTime? Written, long? Bytes);

    private readonly ConcurrentDictionary<string, Look> files = new(StringComparer.Ordinal);

    /// <summary>Full paths, sorted.</summary>
    internal IReadOnlyList<string> Paths => [.. files.Keys.Order(StringComparer.Ordinal)];

    /// <summary>To be said before a file is read, so that no change after it goes unseen.</summary>
    internal void Add(string path) => files.TryAdd(Path.GetFullPath(path), LookAt(path));

    internal bool HaveChanged => files.Any(file => LookAt(file.Key) != file.Value);

    private static Look LookAt(string path)
    {
        var file = new FileInfo(path);
        return file.Exists ? new(file.LastWriteTimeUtc, file.Length) : default;
    }
}
