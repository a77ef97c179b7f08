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
    /// <param name="jobs">How many threads may work.</param>
    internal static ImmutableArray<Crossing> Rough(Drawing drawing, Layout layout, int jobs) =>
        Crossings(
            drawing,
            layout.Grounds,
            StraightSeams.Draw(drawing, layout.Grounds, new Wholeness(drawing, layout.Grounds)),
            jobs
        );

    /// <param name="jobs">How many threads may work.</param>
    internal static Division Divide(OverlapRules rules, Drawing drawing, Layout layout, int jobs = 1)
    {
        var wholeness = new Wholeness(drawing, layout.Grounds);
        var (map, straight) = InOrder.Both(
            jobs,
            () => new CoverMap(drawing, wholeness),
            () => LayerOrder.Kept(drawing, layout.Grounds, StraightSeams.Draw(drawing, layout.Grounds, wholeness))
        );
        var price = new SeamPrice(drawing, wholeness, map);
        var drawn = new List<Network> { straight };
        if (rules.Seams == SeamRule.LeastVisible && layout.Grounds.Length > 1)
        {
            var room = new SeamRoom(layout.Grounds, rules.Width, p => map.TopCut(p.X, p.Y) != CoverMap.Bare);
            drawn.Add(LeastVisibleSeams.Draw(drawing, layout.Grounds, wholeness, room, straight, price, map, jobs));
        }
        var priced = InOrder.Select(drawn, jobs, Priced);
        var (network, turned, cost) = priced[^1].Cost <= priced[0].Cost ? priced[^1] : priced[0];
        return new(
            network.Territories,
            network.Owners,
            network.Seams,
            Crossings(drawing, layout.Grounds, network, jobs),
            turned,
            new(cost, priced[0].Cost, network.Owners.Count(o => o is null))
        );

        (Network Network, ImmutableArray<TurnedLayer> Turned, double Cost) Priced(Network n)
        {
            var layers = TurnedLayers.Find(drawing, n.Territories, n.Owners);
            var shown =
                n.Seams.Sum(s => price.Of(s.Line, s.Later, n.Owners))
                + layers.Sum(t => t.Area * SeamPrice.Turned / Units.SquareMillimetre);
            return (n, layers, Math.Round(shown, 3));
        }
    }

    private static ImmutableArray<Crossing> Crossings(
        Drawing drawing,
        ImmutableArray<Box> grounds,
        Network network,
        int jobs
    )
    {
        int[] cut = [.. Enumerable.Range(0, drawing.Shapes.Length).Where(shape => network.Owners[shape] is null)];
        return [.. InOrder.Select(cut, jobs, shape => Of(drawing, grounds, network, shape)).SelectMany(c => c)];
    }

    /// <summary>The crossings of one shape.</summary>
    private static ImmutableArray<Crossing> Of(Drawing drawing, ImmutableArray<Box> grounds, Network network, int shape)
    {
        var footprint = drawing.Shapes[shape].Footprint;
        var ground = CutGround.Of(footprint);
        return
        [
            .. from seam in network.Seams
            where seam.Line.Bounds.Meets(footprint.Bounds)
            from line in ground.Around(seam.Line.Bounds).Inside(seam.Line)
            select new Crossing(seam.Earlier, seam.Later, shape, line)
            {
                // Room shrinks evenly along a straight stretch, so its ends decide.
                Rooms =
                [
                    .. line
                        .Points.Select(p => SeamRoom.Between(grounds, seam.Earlier, seam.Later, p, ground.GoesOn))
                        .Distinct(),
                ],
            },
        ];
    }
}
