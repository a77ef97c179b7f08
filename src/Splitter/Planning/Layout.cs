using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning;

/// <summary>Fields on the drawing, and for each the ground whose artwork it can sew.</summary>
/// <param name="Grounds">
/// The usable fields, less how far stitches reach past the artwork's edge (pull, and the tape's rounding).
/// </param>
/// <param name="LowerBound">No plan of the drawing has fewer fields.</param>
internal sealed record Layout(ImmutableArray<Field> Fields, ImmutableArray<Box> Grounds, int LowerBound)
{
    /// <summary>The same fields in another order.</summary>
    /// <param name="order">For each new place the old index.</param>
    internal Layout Reordered(ImmutableArray<int> order) =>
        new([.. order.Select(i => Fields[i])], [.. order.Select(i => Grounds[i])], LowerBound);
}
