using System.Collections.Concurrent;
using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Geometry;

namespace Splitter.Parts;

/// <summary>
/// Where the shapes of a drawing lie over each other: worked out once, and asked for in each hooping that sews some of
/// both.
/// </summary>
internal sealed class ShapeOverlaps
{
    /// <summary>
    /// A piece's stitches may lie this far outside its box, µm: half a thread, and the widest pull that is usual.
    /// </summary>
    private const int Margin = Units.Millimetre;

    /// <summary>By the names of two shapes, which are unique in a drawing.</summary>
    private readonly ConcurrentDictionary<(string, string), ImmutableArray<Box>> known = [];

    /// <summary>
    /// For each piece of a hooping those before it that it lies over, by their places. Shapes may lie over each other
    /// where neither piece is: only where both are does the order matter.
    /// </summary>
    internal int[][] Below(ImmutableArray<Piece> pieces)
    {
        ImmutableArray<Box> reaches = [.. pieces.Select(p => p.Bounds.Grown(Margin))];
        var meeting = BoxPairs
            .Meeting(reaches)
            .Where(pair => Touch(pieces[pair.A].Shape, pieces[pair.B].Shape, reaches[pair.A].Common(reaches[pair.B])))
            .ToLookup(pair => pair.B, pair => pair.A);
        return [.. pieces.Select((_, i) => meeting[i].ToArray())];
    }

    private bool Touch(Shape a, Shape b, Box common) =>
        !common.IsEmpty
        && a.Footprint.Bounds.Meets(common)
        && b.Footprint.Bounds.Meets(common)
        && Of(a, b).Any(overlap => overlap.Meets(common));

    private ImmutableArray<Box> Of(Shape a, Shape b) =>
        known.GetOrAdd(
            (a.Id, b.Id),
            _ => [.. Polygons.Intersect(a.Footprint, b.Footprint).Polygons.Select(p => p.Outer.Bounds)]
        );
}
