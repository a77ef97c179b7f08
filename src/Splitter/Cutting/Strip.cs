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
/// <param name="Columns">Ground of satin: no wider than the promised misfit needs.</param>
internal sealed record Strip(int Part, int Over, Region EvenRows, Region OddRows, Region Full, Region Columns)
{
    /// <summary>
    /// Every strip of a plan. With interleaved edges the earlier part's even rows reach over the seam in full and its
    /// odd rows by a share; the later part does the opposite, so that the two are complementary row by row.
    /// </summary>
    /// <param name="jobs">How many threads may work.</param>
    internal static ImmutableArray<Strip> Of(PartGrounds grounds, EdgeRule edges, int jobs = 1)
    {
        return [.. InOrder.Select(grounds.Reaches, jobs, Of).Where(s => !s.Full.IsEmpty)];

        Strip Of(PartReach reach)
        {
            var full = grounds.RowsPast(reach);
            var less = edges == EdgeRule.Plain ? full : grounds.RowsPast(reach, Overlaps.ShortShare);
            var (even, odd) = reach.Part < reach.Over ? (full, less) : (less, full);
            var columns = edges == EdgeRule.Plain ? grounds.Past(reach) : grounds.Past(reach, Overlaps.ShortShare);
            return new(reach.Part, reach.Over, even, odd, grounds.Past(reach), columns);
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
