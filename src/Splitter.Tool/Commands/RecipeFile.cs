using System.Collections.Concurrent;
using System.Collections.Immutable;
using Splitter.Diagnostics;

namespace Splitter.Tool.Commands;

/// <summary>A recipe on disk, and the files beside it that it names.</summary>
/// <param name="Given">Its path as the person gave it.</param>
internal sealed record RecipeFile(string Given)
{
    /// <summary>Larger artwork, in bytes, is no drawing; reading it would only fill the memory.</summary>
    private const int Largest = 64 << 20;

    private readonly ConcurrentDictionary<string, string> sources = new(StringComparer.Ordinal);

    internal string FullPath { get; } = Path.GetFullPath(Given);

    internal string Folder => Path.GetDirectoryName(FullPath)!;

    internal Result<Request> Load(string? hoop, int jobs)
    {
        var (bytes, problem) = ReadBounded(FullPath);
        return problem is null
            ? Result.Of(new Request(Given, bytes, ReadSource) { Hoop = hoop, Jobs = jobs })
            : Result.Fail<Request>(CallProblems.CannotRead(Given, problem));
    }

    /// <summary>
    /// The library names a source as the recipe does; a person at the command line is helped by a path from where they
    /// are.
    /// </summary>
    internal ImmutableArray<Diagnostic> FromHere(ImmutableArray<Diagnostic> diagnostics) =>
        [
            .. diagnostics.Select(d =>
                sources.TryGetValue(d.Place.File, out var path) ? d with { Place = d.Place with { File = path } } : d
            ),
        ];

    private SourceRead ReadSource(string path)
    {
        var shown = Path.GetDirectoryName(Given) is { Length: > 0 } folder
            ? Path.Combine(folder, path).Replace('\\', '/')
            : path;
        sources[path] = shown;
        var (bytes, problem) = ReadBounded(Path.Combine(Folder, path));
        return new(bytes, problem);
    }

    private static (byte[] Bytes, string? Problem) ReadBounded(string path)
    {
        try
        {
            if (Directory.Exists(path))
                return ([], "is a folder");
            using var stream = File.OpenRead(path);
            using var memory = new MemoryStream();
            var block = new byte[1 << 16];
            for (int count; (count = stream.Read(block)) > 0; )
            {
                memory.Write(block.AsSpan(0, count));
                if (memory.Length > Largest)
                    return ([], $"has more than {Largest >> 20} MB");
            }
            return (memory.ToArray(), null);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return ([], "does not exist");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return ([], $"cannot be read ({e.Message})");
        }
    }
}
