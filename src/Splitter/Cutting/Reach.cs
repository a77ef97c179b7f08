using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Cutting;

/// <summary>
/// The ground that one hooping sews of cut shapes: its territory, and past each seam the overlap of that join. Fill rows
/// with even and odd lattice numbers have a ground each; satin and runs have the wider one of every seam.
/// </summary>
internal sealed record Reach(Region Territory, Region EvenRows, Region OddRows, Region Lines)
{
    /// <summary>
    /// With interleaved edges the earlier part's even rows reach over the seam in full and its odd rows by a share; the
    /// later part does the opposite, so that the two are complementary row by row.
    /// </summary>
    internal static Reach Of(Plan plan, int hooping, EdgeRule edges)
    {
        var own = plan.Hoopings[hooping];
        var (even, odd, lines) = (new List<Region>(), new List<Region>(), new List<Region>());
        foreach (var join in plan.Joins.Where(j => j.Earlier == hooping || j.Later == hooping))
        {
            var neighbour = plan.Hoopings[join.Earlier == hooping ? join.Later : join.Earlier].Territory;
            var full = Past(own, neighbour, join.Overlap);
            var share = edges == EdgeRule.Plain ? full : Past(own, neighbour, join.Overlap * Overlaps.ShortShare);
            lines.Add(full);
            even.Add(join.Earlier == hooping ? full : share);
            odd.Add(join.Earlier == hooping ? share : full);
        }
        return new(own.Territory, With(even), With(odd), With(lines));

        Region With(List<Region> strips) =>
            strips.Count == 0 ? own.Territory : Polygons.Union([own.Territory, .. strips]);
    }

    /// <summary>The strip of a neighbour's territory along the seam, as far as this field can sew.</summary>
    internal static Region Past(Hooping own, Region neighbour, double by) =>
        Polygons.Intersect(
            Polygons.Intersect(Polygons.Offset(own.Territory, by, Join.Mitre), neighbour),
            Region.Of(own.Ground)
        );
}
