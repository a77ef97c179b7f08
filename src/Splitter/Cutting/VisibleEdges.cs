using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Seams;

namespace Splitter.Cutting;

/// <summary>
/// Where a fill is sewn after a shape that lies over it, its rows would run over that shape's edge: there it is cut at
/// the edge that one sees, as if its trap under the other had never been.
/// </summary>
internal sealed class VisibleEdges(Drawing drawing, Plan plan, PartGrounds grounds)
{
    private readonly ILookup<(int Shape, int Part), TurnedLayer> turned = (
        grounds.AreParted ? TurnedLayers.Find(drawing, grounds.Territories, plan.Owners) : plan.TurnedLayers
    ).ToLookup(t => (t.Lower, t.Then));

    /// <summary>The ground on which the part would sew a fill over what it should lie under.</summary>
    internal Region Above(int shape, int part) =>
        Polygons.Union(
            from layer in turned[(shape, part)]
            let upper = drawing.Shapes[layer.Upper]
            // A line is too fine to leave a gap for: it shows less of itself, and the plan says so.
            where upper is not RunShape
            select plan.Owners[layer.Upper] is null
                ? Polygons.Intersect(upper.Footprint, grounds.Territories[layer.First])
                : upper.Footprint
        );
}
