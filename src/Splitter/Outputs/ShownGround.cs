using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Seams;
using Splitter.Stitching.Density;

namespace Splitter.Outputs;

/// <summary>What several outputs show of a work, found when the first one asks.</summary>
internal sealed class ShownGround(Drawing drawing, Plan plan)
{
    /// <summary>Outlines are drawn without details smaller than this, µm: they would not show.</summary>
    private const double Detail = 50;

    private readonly Lazy<ImmutableArray<Region>> outlines = new(() =>
        [.. drawing.Shapes.Select(shape => Polygons.Simplify(shape.Footprint, Detail))]
    );

    private readonly Lazy<ImmutableArray<SeamStretch>> seams = new(() => SeamStretches.Of(drawing, plan));

    /// <summary>Where too much thread or too many holes are; none as long as nothing is stitched.</summary>
    internal ImmutableArray<DenseSpot> Dense { get; init; } = [];

    internal Drawing Drawing => drawing;

    internal Plan Plan => plan;

    /// <summary>Of each shape.</summary>
    internal ImmutableArray<Region> Outlines => outlines.Value;

    internal ImmutableArray<SeamStretch> Seams => seams.Value;
}
