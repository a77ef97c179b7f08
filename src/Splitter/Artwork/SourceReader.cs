using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes;

namespace Splitter.Artwork;

/// <summary>Fetches the files that a recipe names.</summary>
internal static class SourceReader
{
    /// <summary>None when the recipe has its shapes in itself; a file that cannot be read is an error.</summary>
    internal static Result<ImmutableArray<SourceFile>> Read(Recipe recipe, ReadSource read)
    {
        if (recipe.Artwork.File is not { } path)
            return Result.Of(ImmutableArray<SourceFile>.Empty);
        var got = read(path);
        return got.Problem is { } why
            ? Result.Fail<ImmutableArray<SourceFile>>(
                DrawingProblems.NotReadable(recipe.PlaceOf("artwork.file"), path, why)
            )
            : Result.Of(ImmutableArray.Create(new SourceFile(path, got.Bytes)));
    }
}
