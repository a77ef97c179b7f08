using System.Collections.Concurrent;
using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Tool.Commands.Watching;

namespace Splitter.Tool.Commands;

/// <summary>A recipe on disk, and the files beside it that it names.</summary>
/// <param name="Given">Its path as the person gave it.</param>
/// <param name="Inputs">Hears of every file that is looked at; null where nobody asks.</param>
internal sealed record RecipeFile(string Given, InputFiles? Inputs = null)
{
    private readonly ConcurrentDictionary<string, string> sources = new(StringComparer.Ordinal);

    internal string FullPath { get; } = Path.GetFullPath(Given);

    /// <summary>The recipe and what it names, as far as it was read.</summary>
    internal IEnumerable<string> FilesRead =>
        sources.Keys.Select(path => Path.GetFullPath(Path.Combine(Folder, path))).Prepend(FullPath);

    internal string Folder => Path.GetDirectoryName(FullPath)!;

    internal Result<Request> Load(string? hoop, int jobs)
    {
        Inputs?.Add(FullPath);
        var (bytes, problem) = BoundedFile.Read(FullPath);
        return problem is null
            ? Result.Of(new Request(Given, bytes, ReadSource) { Hoop = hoop, Jobs = jobs })
            : Result.Fail<Request>(CallProblems.CannotRead(Given, problem));
    }

    /// <summary>
    /// The library names a source as the recipe does; a person at the command line is helped by a path from where they
    /// are.
    /// </summary>
    internal ImmutableArray<Diagnostic> FromHere(ImmutableArray<Diagnostic> diagnostics) =>
        [.. diagnostics.Select(d => d with { Place = FromHere(d.Place) })];

    internal Place FromHere(Place place) =>
        sources.TryGetValue(place.File, out var path) ? place with { File = path } : place;

    private SourceRead ReadSource(string path)
    {
        var shown = Path.GetDirectoryName(Given) is { Length: > 0 } folder
            ? Path.Combine(folder, path).Replace('\\', '/')
            : path;
        sources[path] = shown;
        Inputs?.Add(Path.Combine(Folder, path));
        var (bytes, problem) = BoundedFile.Read(Path.Combine(Folder, path));
        return new(bytes, problem);
    }
}
