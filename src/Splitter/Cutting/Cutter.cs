using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Cutting;

/// <summary>Divides the drawing among the hoopings of a plan.</summary>
internal static class Cutter
{
    internal static ImmutableArray<Piece> Cut(Drawing drawing, Plan plan, OverlapRules overlap) =>
        throw new NotSupportedException();
}
