using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// Which shapes stay whole: all that fit a field. For each the fields that can sew it; none for a cut one.
/// </summary>
internal sealed class Wholeness
{
    internal Wholeness(Drawing drawing, ImmutableArray<Box> grounds)
    {
        Fields =
        [
            .. drawing.Shapes.Select(shape =>
            {
                var box = shape.Footprint.Bounds;
                return Enumerable.Range(0, grounds.Length).Where(i => grounds[i].Contains(box)).ToArray();
            }),
        ];
    }

    /// <summary>For each shape the fields that can sew it whole, rising.</summary>
    internal ImmutableArray<int[]> Fields { get; }

    internal bool IsCut(int shape) => Fields[shape].Length == 0;
}
