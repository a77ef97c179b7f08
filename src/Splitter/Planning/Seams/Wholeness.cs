using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// Which shapes stay whole: all that fit a field. For each the fields that can sew it; none for a cut one.
/// </summary>
internal sealed class Wholeness
{
    private readonly bool[] cut;

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
        cut = [.. Fields.Select(fields => fields.Length == 0)];
    }

    /// <summary>For each shape the fields that can sew it whole, rising.</summary>
    internal ImmutableArray<int[]> Fields { get; }

    internal bool IsCut(int shape) => cut[shape];
}
