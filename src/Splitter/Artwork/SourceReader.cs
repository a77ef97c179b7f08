using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes;

namespace Splitter.Artwork;

/// <summary>Fetches the files that a recipe names.</summary>
internal static class SourceReader
{
    internal static Result<ImmutableArray<SourceFile>> Read(Recipe recipe, ReadSource read) =>
        throw new NotSupportedException();
}
