using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes;

namespace Splitter.Artwork;

/// <summary>Fetches the files that a recipe names.</summary>
internal static class SourceReader
{
    /// <summary>What it includes has been read; its artwork is, unless it has its shapes in itself.</summary>
    internal static Result<ImmutableArray<SourceFile>> Read(Recipe recipe, ReadSource read)
    {
        if (recipe.Artwork.File is not { } path)
            return Result.Of(recipe.Included);
        var got = read(path);
        return got.Problem is { } why
            ? Result.Fail<ImmutableArray<SourceFile>>(
                DrawingProblems.NotReadable(recipe.PlaceOf("artwork.file"), path, why)
            )
            : Result.Of(recipe.Included.Add(new SourceFile(path, got.Bytes)));
    }
}
