using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes;

namespace Splitter.Artwork;

/// <summary>Artwork in any of its forms to a <see cref="Drawing"/>.</summary>
internal static class DrawingReader
{
    internal static Result<Drawing> Read(Recipe recipe, ImmutableArray<SourceFile> sources) =>
        throw new NotSupportedException();
}
