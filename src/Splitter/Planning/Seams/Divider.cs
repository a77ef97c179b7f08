using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Seams;

/// <summary>Divides the drawing among the fields of a layout, which stand in sewing order.</summary>
internal static class Divider
{
    /// <summary>
    /// A seam no deeper than this inside a shape runs along its edge and does not cut it, µm: half a step of the tape.
    /// </summary>
    private const double Brushing = 50;

    /// <summary>
    /// Where straight seams would run through shapes that no field holds: enough to choose a sewing order by. Fields need
    /// not stand in it yet.
    /// </summary>
    internal static ImmutableArray<Crossing> Rough(Drawing drawing, Layout layout) =>
        Crossings(drawing, StraightSeams.Draw(drawing, layout.Grounds, new Wholeness(drawing, layout.Grounds)));

    internal static Division Divide(Drawing drawing, Layout layout, SeamRule rule)
    {
        var wholeness = new Wholeness(drawing, layout.Grounds);
        var map = new CoverMap(drawing, wholeness);
        var price = new SeamPrice(drawing, wholeness, map);
        var straight = LayerOrder.Kept(drawing, layout.Grounds, StraightSeams.Draw(drawing, layout.Grounds, wholeness));
        var straightCost = Cost(straight);
        var (network, cost) = (straight, straightCost);
        if (rule == SeamRule.LeastVisible && layout.Grounds.Length > 1)
        {
            var least = LeastVisibleSeams.Draw(drawing, layout.Grounds, wholeness, straight, price, map);
            if (Cost(least) is var leastCost && leastCost <= straightCost)
                (network, cost) = (least, leastCost);
        }
        return new(
            network.Territories,
            network.Owners,
            network.Seams,
            Crossings(drawing, network),
            new(cost, straightCost, network.Owners.Count(o => o is null))
        );

        double Cost(Network n) => Math.Round(n.Seams.Sum(s => price.Of(s.Line, s.Later, n.Owners)), 3);
    }

    private static ImmutableArray<Crossing> Crossings(Drawing drawing, Network network) =>
        [
            .. from shape in Enumerable.Range(0, drawing.Shapes.Length)
            where network.Owners[shape] is null
            let inside = new PathClipping(Polygons.Offset(drawing.Shapes[shape].Footprint, -Brushing, Join.Mitre))
            from seam in network.Seams
            from line in inside.Inside(seam.Line)
            select new Crossing(seam.Earlier, seam.Later, shape, line),
        ];
}
