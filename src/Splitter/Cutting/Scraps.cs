using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Cutting;

/// <summary>
/// Gives scraps of a fill whole to the neighbour along which they lie longest, the smallest ones first: where its field
/// holds them and the drawing's layers allow it. Two scraps side by side become one.
/// </summary>
internal sealed class Scraps(Drawing drawing, Plan plan, PartGrounds grounds)
{
    /// <summary>
    /// A smaller piece is a scrap, µm²: 6 mm² are some 15 mm of thread in rows, hardly more than what ties it at both
    /// ends. Common practice, no source.
    /// </summary>
    internal const double Smallest = 6_000_000;

    /// <summary>Two pieces nearer than this lie side by side, µm: snapping parts them by one or two.</summary>
    internal const double Beside = 20;

    /// <param name="cores">By hooping; changed in place.</param>
    internal void Give(int shape, Region[] cores)
    {
        // Every gift leaves fewer pieces; should snapping keep two apart, it ends all the same.
        for (var gifts = cores.Sum(c => c.Polygons.Length); gifts > 0 && GiveOne(shape, cores); )
            gifts--;
    }

    private bool GiveOne(int shape, Region[] cores)
    {
        var smallestFirst =
            from part in Enumerable.Range(0, cores.Length)
            from polygon in cores[part].Polygons
            where polygon.Area < Smallest
            orderby polygon.Area, part, polygon.Outer.Points[0]
            select (part, polygon);
        foreach (var (from, polygon) in smallestFirst)
        {
            var scrap = new Region([polygon]);
            if (Taker(shape, from, scrap, cores) is not { } to)
                continue;
            cores[from] = new Region(cores[from].Polygons.Remove(polygon));
            cores[to] = Polygons.Union(cores[to], scrap);
            return true;
        }
        return false;
    }

    private int? Taker(int shape, int from, Region scrap, Region[] cores)
    {
        var around = Polygons.Offset(scrap, Beside);
        return Enumerable
            .Range(0, cores.Length)
            .Where(to =>
                to != from && plan.Hoopings[to].Ground.Contains(scrap.Bounds) && cores[to].Bounds.Meets(around.Bounds)
            )
            .Select(to => (To: to, Large: Shared(to, isScrap: false), Small: Shared(to, isScrap: true)))
            .Where(t => t.Large + t.Small > 0 && KeepsLayers(shape, scrap, t.To))
            .OrderByDescending(t => t.Large)
            .ThenByDescending(t => t.Small)
            .ThenBy(t => t.To)
            .Select(t => (int?)t.To)
            .FirstOrDefault();

        double Shared(int to, bool isScrap) =>
            cores[to]
                .Polygons.Where(p => p.Area < Smallest == isScrap && p.Outer.Bounds.Meets(around.Bounds))
                .Sum(p => Polygons.Intersect(around, new Region([p])).Area);
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
            if (common.Area <= Cores.Nothing)
                continue;
            for (var h = 0; h < plan.Hoopings.Length; h++)
                if (
                    (other > shape ? h < hooping : h > hooping)
                    && (
                        plan.Owners[other] is { } owner
                            ? owner == h
                            : Polygons.Intersect(grounds.Territories[h], common).Area > Cores.Nothing
                    )
                )
                    return false;
        }
        return true;
    }
}
