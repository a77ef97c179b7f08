using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Cutting;

/// <summary>
/// Shares a fill out among territories. Where a seam follows the fill's own edge, slivers of it are left on the other
/// side; they go to the neighbour, whose rows all reach over the seam that far anyway.
/// </summary>
internal static class Cores
{
    /// <summary>Ground that snapping to whole micrometres leaves of nothing, µm²: a few µm along some centimetres.</summary>
    private const double Nothing = 5000;

    /// <summary>For each hooping the ground that it alone sews.</summary>
    internal static Region[] Of(Shape shape, Plan plan, EdgeRule edges)
    {
        var cores = plan
            .Hoopings.Select(h =>
                h.Territory.Bounds.Meets(shape.Footprint.Bounds)
                    ? Polygons.Intersect(shape.Footprint, h.Territory)
                    : Region.Empty
            )
            .ToArray();
        var shared = (Region[])cores.Clone();
        foreach (var join in plan.Joins)
        {
            Give(join.Earlier, join.Later, join.Overlap);
            Give(join.Later, join.Earlier, join.Overlap);
        }
        return shared;

        void Give(int from, int to, int overlap)
        {
            var reach = edges == EdgeRule.Plain ? overlap : overlap * Overlaps.ShortShare;
            // Whoever takes slivers must not be one itself.
            if (shared[from].IsEmpty || !cores[to].Polygons.Any(p => Width(p) > 2 * overlap))
                return;
            Region? strip = null;
            foreach (var polygon in shared[from].Polygons.Where(p => Width(p) <= 2 * reach))
            {
                var sliver = new Region([polygon]);
                strip ??= Reach.Past(plan.Hoopings[to], plan.Hoopings[from].Territory, reach);
                if (Polygons.Subtract(sliver, strip).Area > Nothing)
                    continue;
                shared[from] = new Region(shared[from].Polygons.Remove(polygon));
                shared[to] = Polygons.Union(shared[to], sliver);
            }
        }
    }

    /// <summary>Those stretches of the ground of rows that belong to a core: not overlaps along an edge without any.</summary>
    internal static Region With(Region core, Region rows) =>
        rows.Polygons.Length == 1
            ? rows
            : new Region([.. rows.Polygons.Where(p => Polygons.Intersect(new Region([p]), core).Area > Nothing)]);

    /// <summary>How wide a long and narrow polygon is, µm; of others about a third of their width.</summary>
    private static double Width(Polygon polygon) => 2 * polygon.Area / polygon.Rings.Sum(r => r.ToPolyline().Length);
}
