using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// Keeps the drawing's layers through the sewing order: a shape that several fields could sew whole goes to one that is
/// sewn no earlier than the ground below it, so that it lies on sewn ground and not on bare cloth beside a notch.
/// </summary>
internal static class LayerOrder
{
    /// <summary>The same division, in sewing order, with such shapes given to later hoopings where a field allows it.</summary>
    internal static Division Kept(Drawing drawing, Layout layout, Division division)
    {
        var boxes = drawing.Shapes.Select(s => s.Footprint.Bounds).ToArray();
        var owners = division.Owners.ToArray();
        foreach (var pair in BoxPairs.Meeting(boxes).GroupBy(p => p.B, p => p.A).OrderBy(g => g.Key))
        {
            var (upper, box) = (pair.Key, boxes[pair.Key]);
            if (owners[upper] is not { } owner)
                continue;
            // Lower shapes come first, so that their own hoopings are settled.
            var below = pair.SelectMany(lower => Hoopings(division, owners[lower], boxes[lower].Common(box)))
                .DefaultIfEmpty(owner)
                .Max();
            if (below > owner)
                owners[upper] = Enumerable
                    .Range(owner, below - owner + 1)
                    .Last(i => i == owner || layout.Grounds[i].Contains(box));
        }
        return division with { Owners = [.. owners] };
    }

    /// <summary>The hoopings that sew a shape within a box.</summary>
    private static IEnumerable<int> Hoopings(Division division, int? owner, Box within) =>
        owner is { } only
            ? [only]
            : Enumerable
                .Range(0, division.Territories.Length)
                .Where(i => !Polygons.Intersect(division.Territories[i], Region.Of(within)).IsEmpty);
}
