using Splitter.Diagnostics;

namespace Splitter.Recipes;

/// <summary>YAML to <see cref="Recipe"/>, strict.</summary>
internal static class RecipeReader
{
    internal static Result<Recipe> Read(string file, ReadOnlyMemory<byte> bytes) => throw new NotSupportedException();
}
