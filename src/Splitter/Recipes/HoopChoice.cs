using System.Collections.Immutable;
using Splitter.Diagnostics;

namespace Splitter.Recipes;

/// <summary>Which hoops of a recipe are asked for.</summary>
internal static class HoopChoice
{
    /// <summary>The hoop of that name, or all of them for null; an unknown name is an error that lists the known ones.</summary>
    internal static Result<ImmutableArray<Hoop>> Choose(Recipe recipe, string? name) =>
        throw new NotSupportedException();
}
