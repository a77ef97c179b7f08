using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Seams;

/// <summary>Divides the drawing among the fields of a layout, which stand in sewing order.</summary>
internal static class Divider
{
    /// <summary>
    /// Where straight seams would run through shapes that no field holds: enough to choose a sewing order by. Fields
    /// need not stand in it yet.
    /// </summary>
    internal static ImmutableArray<Crossing> Rough(Drawing drawing, Layout layout) =>
        Crossings(
            drawing,
            layout.Grounds,
            StraightSeams.Draw(drawing, layout.Grounds, new Wholeness(drawing, layout.Grounds))
        );

    internal static Division Divide(OverlapRules rules, Drawing drawing, Layout layout)
    {
        var wholeness = new Wholeness(drawing, layout.Grounds);
        var map = new CoverMap(drawing, wholeness);
        var price = new SeamPrice(drawing, wholeness, map);
        var straight = LayerOrder.Kept(drawing, layout.Grounds, StraightSeams.Draw(drawing, layout.Grounds, wholeness));
        var turned = Turned(straight);
        var straightCost = Cost(straight, turned);
        var (network, cost) = (straight, straightCost);
        if (rules.Seams == SeamRule.LeastVisible && layout.Grounds.Length > 1)
        {
            var room = new SeamRoom(layout.Grounds, rules.Width, p => map.TopCut(p.X, p.Y) != CoverMap.Bare);
            var least = LeastVisibleSeams.Draw(drawing, layout.Grounds, wholeness, room, straight, price, map);
            var leastTurned = Turned(least);
            if (Cost(least, leastTurned) is var leastCost && leastCost <= straightCost)
                (network, turned, cost) = (least, leastTurned, leastCost);
        }
        return new(
            network.Territories,
            network.Owners,
            network.Seams,
            Crossings(drawing, layout.Grounds, network),
            turned,
            new(cost, straightCost, network.Owners.Count(o => o is null))
        );

        ImmutableArray<TurnedLayer> Turned(Network n) => TurnedLayers.Find(drawing, n.Territories, n.Owners);

        double Cost(Network n, ImmutableArray<TurnedLayer> turned) =>
            Math.Round(
                n.Seams.Sum(s => price.Of(s.Line, s.Later, n.Owners))
                    + turned.Sum(t => t.Area * SeamPrice.Turned / Units.SquareMillimetre),
                3
            );
    }

    private static ImmutableArray<Crossing> Crossings(Drawing drawing, ImmutableArray<Box> grounds, Network network) =>
        [
            .. from shape in Enumerable.Range(0, drawing.Shapes.Length)
            where network.Owners[shape] is null
            let footprint = drawing.Shapes[shape].Footprint
            let ground = CutGround.Of(footprint)
            let goesOn = Polygons.Containment(footprint)
            from seam in network.Seams
            where seam.Line.Bounds.Meets(footprint.Bounds)
            from line in ground.Around(seam.Line.Bounds).Inside(seam.Line)
            select new Crossing(seam.Earlier, seam.Later, shape, line)
            {
                // Room shrinks evenly along a straight stretch, so its ends decide.
                Rooms =
                [
                    .. line
                        .Points.Select(p =>
                            SeamRoom.Between(grounds, seam.Earlier, seam.Later, p, at => goesOn(at.X, at.Y))
                        )
                        .Distinct(),
                ],
            },
        ];
}
