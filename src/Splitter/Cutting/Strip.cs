using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Cutting;

/// <summary>The ground beyond one seam that a hooping sews as an overlap.</summary>
/// <param name="Part">Index of the hooping that sews it.</param>
/// <param name="Over">Index of the hooping whose territory it is.</param>
/// <param name="EvenRows">Ground of fill rows with even lattice numbers.</param>
/// <param name="OddRows">Ground of fill rows with odd lattice numbers.</param>
/// <param name="Full">The wider of both.</param>
internal sealed record Strip(int Part, int Over, Region EvenRows, Region OddRows, Region Full)
{
    /// <summary>More parts than this do not overlap a territory at one place: with its own that makes three.</summary>
    private const int Most = 2;

    /// <summary>
    /// Every strip of a plan. With interleaved edges the earlier part's even rows reach over the seam in full and its odd
    /// rows by a share; the later part does the opposite, so that the two are complementary row by row.
    /// </summary>
    internal static ImmutableArray<Strip> Of(Plan plan, EdgeRule edges)
    {
        var strips = plan.Joins.SelectMany(j => new[] { Of(j, j.Earlier, j.Later), Of(j, j.Later, j.Earlier) });
        return [.. strips.GroupBy(s => s.Over).OrderBy(g => g.Key).SelectMany(g => Uncrowded([.. g]))];

        Strip Of(PartJoin join, int part, int over)
        {
            var full = Past(plan, part, over, join.Overlap);
            var share = edges == EdgeRule.Plain ? full : Past(plan, part, over, join.Overlap * Overlaps.ShortShare);
            return part < over ? new(part, over, full, share, full) : new(part, over, share, full, full);
        }
    }

    /// <summary>The strip of a neighbour's territory along the seam, as far as the part's field can sew.</summary>
    internal static Region Past(Plan plan, int part, int over, double by) =>
        Polygons.Intersect(
            Polygons.Intersect(
                Polygons.Offset(plan.Hoopings[part].Territory, by, Join.Mitre),
                plan.Hoopings[over].Territory
            ),
            Region.Of(plan.Hoopings[part].Ground)
        );

    /// <summary>
    /// Where four parts or more come close together, a territory is overlapped by the two that share most seam with it.
    /// Those that yield hardly meet it: across the place where four corners touch, or along a short seam between two
    /// junctions, which the others' overlaps lie over from both ends.
    /// </summary>
    private static IEnumerable<Strip> Uncrowded(ImmutableArray<Strip> strips)
    {
        var following = strips.OrderByDescending(s => s.Full.Area).ThenBy(s => s.Part).ToList();
        for (var i = 0; i < following.Count; i++)
        {
            var strip = following[i];
            if (i < Most)
            {
                yield return strip;
                continue;
            }
            var crowd = Common([.. following.Take(i).Select(s => Polygons.Intersect(s.Full, strip.Full))]);
            yield return crowd.IsEmpty
                ? strip
                : strip with
                {
                    EvenRows = Polygons.Subtract(strip.EvenRows, crowd),
                    OddRows = Polygons.Subtract(strip.OddRows, crowd),
                    Full = Polygons.Subtract(strip.Full, crowd),
                };
        }
    }

    /// <summary>The ground that lies in two regions or more.</summary>
    internal static Region Common(ImmutableArray<Region> regions)
    {
        var common = new List<Region>();
        for (var i = 0; i < regions.Length; i++)
        for (var j = 0; j < i; j++)
            common.Add(Polygons.Intersect(regions[i], regions[j]));
        return Polygons.Union(common);
    }
}
