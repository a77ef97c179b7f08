using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Cutting;

/// <summary>
/// Shares a fill out among territories. Where a seam follows the fill's own edge, slivers of it are left on the other
/// side; they go to the neighbour, whose rows all reach over the seam that far anyway. So do scraps, where the
/// neighbour's field holds them and the drawing's layers allow it.
/// </summary>
internal sealed class Cores(Drawing drawing, Plan plan, EdgeRule edges)
{
    /// <summary>
    /// A smaller piece is a scrap, µm²: 6 mm² are some 15 mm of thread in rows, hardly more than what ties it at both
    /// ends. Common practice, no source.
    /// </summary>
    internal const double Scrap = 6_000_000;

    /// <summary>Ground that snapping to whole micrometres leaves of nothing, µm²: a few µm along some centimetres.</summary>
    internal const double Nothing = 5000;

    /// <summary>Two pieces nearer than this lie side by side, µm: snapping parts them by one or two.</summary>
    private const double Beside = 20;

    /// <summary>For each hooping the ground that it alone sews.</summary>
    internal Region[] Of(int index)
    {
        var shape = drawing.Shapes[index];
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
            GiveSlivers(join.Earlier, join.Later, join.Overlap);
            GiveSlivers(join.Later, join.Earlier, join.Overlap);
        }
        for (var from = 0; from < shared.Length; from++)
            GiveScraps(index, shared, from);
        return shared;

        void GiveSlivers(int from, int to, int overlap)
        {
            var reach = edges == EdgeRule.Plain ? overlap : overlap * Overlaps.ShortShare;
            // Whoever takes slivers must not be one itself.
            if (shared[from].IsEmpty || !cores[to].Polygons.Any(p => Width(p) > 2 * overlap))
                return;
            Region? strip = null;
            foreach (var polygon in shared[from].Polygons.Where(p => Width(p) <= 2 * reach))
            {
                var sliver = new Region([polygon]);
                strip ??= Strip.Past(plan, to, from, reach);
                if (Polygons.Subtract(sliver, strip).Area > Nothing)
                    continue;
                shared[from] = new Region(shared[from].Polygons.Remove(polygon));
                shared[to] = Polygons.Union(shared[to], sliver);
            }
        }
    }

    /// <summary>
    /// The ground of rows for a core: stretches that belong to it (not overlaps along an edge without any), and what it got
    /// from neighbours.
    /// </summary>
    internal static Region With(Region core, Region rows)
    {
        var kept =
            rows.Polygons.Length == 1
                ? rows
                : new Region([.. rows.Polygons.Where(p => Polygons.Intersect(new Region([p]), core).Area > Nothing)]);
        return Polygons.Subtract(core, kept).Area > Nothing ? Polygons.Union(kept, core) : kept;
    }

    private void GiveScraps(int shape, Region[] shared, int from)
    {
        foreach (var polygon in shared[from].Polygons.Where(p => p.Area < Scrap))
        {
            var scrap = new Region([polygon]);
            var around = Polygons.Offset(scrap, Beside);
            var taker = Enumerable
                .Range(0, shared.Length)
                .Where(to =>
                    to != from
                    && plan.Hoopings[to].Ground.Contains(scrap.Bounds)
                    && shared[to].Bounds.Meets(around.Bounds)
                )
                .Select(to => (To: to, Shared: SharedWith(shared[to])))
                .Where(t => t.Shared > 0 && KeepsLayers(shape, scrap, t.To))
                .OrderByDescending(t => t.Shared)
                .ThenBy(t => t.To)
                .Select(t => (int?)t.To)
                .FirstOrDefault();
            if (taker is not { } to)
                continue;
            shared[from] = new Region(shared[from].Polygons.Remove(polygon));
            shared[to] = Polygons.Union(shared[to], scrap);

            // Scraps are not given to scraps.
            double SharedWith(Region other) =>
                other
                    .Polygons.Where(p => p.Area >= Scrap && p.Outer.Bounds.Meets(around.Bounds))
                    .Sum(p => Polygons.Intersect(around, new Region([p])).Area);
        }
    }

    /// <summary>Nothing that lies over the ground is sewn before the hooping, and nothing under it after.</summary>
    private bool KeepsLayers(int shape, Region ground, int hooping)
    {
        for (var other = 0; other < drawing.Shapes.Length; other++)
        {
            var footprint = drawing.Shapes[other].Footprint;
            if (other == shape || !footprint.Bounds.Meets(ground.Bounds))
                continue;
            var common = Polygons.Intersect(footprint, ground);
            if (common.Area <= Nothing)
                continue;
            for (var h = 0; h < plan.Hoopings.Length; h++)
                if (
                    (other > shape ? h < hooping : h > hooping)
                    && (
                        plan.Owners[other] is { } owner
                            ? owner == h
                            : Polygons.Intersect(plan.Hoopings[h].Territory, common).Area > Nothing
                    )
                )
                    return false;
        }
        return true;
    }

    /// <summary>How wide a long and narrow polygon is, µm; of others about a third of their width.</summary>
    private static double Width(Polygon polygon) => 2 * polygon.Area / polygon.Rings.Sum(r => r.ToPolyline().Length);
}
