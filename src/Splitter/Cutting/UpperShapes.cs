using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Cutting;

/// <summary>
/// For each shape of a drawing the later ones that may lie over some of it, so that not all of thousands are asked.
/// </summary>
internal sealed class UpperShapes(Drawing drawing)
{
    private readonly ILookup<int, int> meeting = BoxPairs
        .Meeting(drawing.Shapes.Select(s => s.Footprint.Bounds))
        .ToLookup(pair => pair.A, pair => pair.B);

    /// <summary>Their indexes, rising: the boxes of both meet.</summary>
    internal IEnumerable<int> Of(int shape) => meeting[shape];

    /// <summary>Ground of those that come near a box within the shape's own; of lines none.</summary>
    internal IEnumerable<Region> Grounds(int shape, Box box) =>
        from upper in meeting[shape]
        let over = drawing.Shapes[upper]
        where over is not RunShape && over.Footprint.Bounds.Meets(box)
        select over.Footprint;
}
