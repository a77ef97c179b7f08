using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// Keeps the drawing's layers through the sewing order where seams are straight: a shape that several fields could sew
/// whole goes to one that is sewn no earlier than the ground below it, so that it lies on sewn ground and not on bare
/// cloth beside a notch.
/// </summary>
internal static class LayerOrder
{
    /// <summary>The same seams, with such shapes given to later hoopings where a field allows it.</summary>
    internal static Network Kept(Drawing drawing, ImmutableArray<Box> grounds, Network network)
    {
        var boxes = drawing.Shapes.Select(s => s.Footprint.Bounds).ToArray();
        var owners = network.Owners.ToArray();
        foreach (var pair in BoxPairs.Meeting(boxes).GroupBy(p => p.B, p => p.A).OrderBy(g => g.Key))
        {
            var (upper, box) = (pair.Key, boxes[pair.Key]);
            if (owners[upper] is not { } owner)
                continue;
            // Lower shapes come first, so that their own hoopings are settled.
            var below = pair.SelectMany(lower => Hoopings(network, owners[lower], boxes[lower].Common(box)))
                .DefaultIfEmpty(owner)
                .Max();
            if (below > owner)
                owners[upper] = Enumerable
                    .Range(owner, below - owner + 1)
                    .Last(i => i == owner || grounds[i].Contains(box));
        }
        return network with { Owners = [.. owners] };
    }

    /// <summary>The hoopings that sew a shape within a box.</summary>
    private static IEnumerable<int> Hoopings(Network network, int? owner, Box within) =>
        owner is { } only
            ? [only]
            : Enumerable
                .Range(0, network.Territories.Length)
                .Where(i => !Polygons.Intersect(network.Territories[i], Region.Of(within)).IsEmpty);
}
