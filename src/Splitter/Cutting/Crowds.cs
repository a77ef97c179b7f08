using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Cutting;

/// <summary>
/// Where four parts or more come so close together that all would lie on each other, one of them gives the ground there
/// to a neighbour: of a point where four corners touch it makes two points where three do, as far apart as their
/// overlaps need. All seams keep their overlaps in full.
/// </summary>
internal static class Crowds
{
    /// <summary>More parts than this do not overlap a territory at one place: with its own that makes three.</summary>
    private const int Most = 2;

    /// <summary>
    /// How far beyond the crowd ground is given away, in reaches: right angles need one, slanting seams more.
    /// </summary>
    private static readonly ImmutableArray<double> Wider = [1, 1.5, 2, 3, 4, 6];

    /// <summary>
    /// Territories further off than this have no part in a crowd, in reaches: mitres are up to four long.
    /// </summary>
    private const int Around = 12;

    /// <summary>
    /// Crowds are parted one after the other, and one may make another; hardly any drawing has more than a few.
    /// </summary>
    private const int MostRounds = 8;

    /// <param name="jobs">How many threads may work.</param>
    internal static PartGrounds Parted(PartGrounds grounds, int jobs)
    {
        for (var round = 0; round < MostRounds; round++)
        {
            var crowds = Find(grounds, jobs);
            if (crowds.IsEmpty)
                break;
            foreach (var crowd in crowds.Polygons)
                grounds = Part(grounds, new Region([crowd]), jobs);
        }
        return grounds;
    }

    /// <summary>Ground on which more than three parts would sew.</summary>
    internal static Region Find(PartGrounds grounds, int jobs = 1)
    {
        var found = InOrder.Select([.. grounds.Reaches.GroupBy(r => r.Over)], jobs, Crowded);
        return new([.. Polygons.Union(found.SelectMany(f => f)).Polygons.Where(p => p.Area > Cores.Nothing)]);

        List<Region> Crowded(IEnumerable<PartReach> over)
        {
            var crowds = new List<Region>();
            Region[] strips = [.. over.Select(reach => grounds.Past(reach)).Where(strip => !strip.IsEmpty)];
            for (var i = Most; i < strips.Length; i++)
            for (var j = 1; j < i; j++)
            {
                var two = Polygons.Intersect(strips[i], strips[j]);
                for (var k = 0; k < j && !two.IsEmpty; k++)
                    crowds.Add(Polygons.Intersect(two, strips[k]));
            }
            return crowds;
        }
    }

    private static PartGrounds Part(PartGrounds grounds, Region crowd, int jobs)
    {
        var reach = grounds.Reaches.Max(r => r.By);
        var window = Region.Of(crowd.Bounds.Grown(Around * reach));
        var local = grounds.On([.. grounds.Territories.Select(t => Polygons.Intersect(t, window))]);
        foreach (var wider in Wider)
        {
            var near = Polygons.Offset(crowd, wider * reach, Join.Mitre);
            var seen = Region.Of(near.Bounds.Grown(reach));
            var leastFirst =
                from giver in Enumerable.Range(0, local.Territories.Length)
                let ground = Polygons.Intersect(local.Territories[giver], near)
                where !ground.IsEmpty
                let takers = Enumerable
                    .Range(0, local.Territories.Length)
                    .Where(taker => taker != giver && grounds.FieldOf(taker).Contains(ground.Bounds))
                    .ToArray()
                where takers.Length > 0
                let beside = Polygons.Offset(ground, Scraps.Beside, Join.Mitre)
                from taker in takers
                where LieSideBySide(beside, local.Territories[taker], reach)
                orderby ground.Area, giver, taker
                select (Giver: giver, Taker: taker, Ground: ground);
            // So many at a time as there are threads; none is tried after one that will do.
            foreach (var some in leastFirst.Chunk(jobs))
                if (
                    InOrder.Select(some, jobs, gift => Parts(gift.Giver, gift.Taker, gift.Ground)).IndexOf(true)
                    is >= 0
                        and var first
                )
                    return Given(grounds, some[first].Giver, some[first].Taker, some[first].Ground);

            bool Parts(int giver, int taker, Region ground)
            {
                var given = Given(local, giver, taker, ground);
                return given.Territories[giver].Polygons.Length <= local.Territories[giver].Polygons.Length
                    && Polygons.Intersect(Find(given), seen).Area <= Cores.Nothing;
            }
        }
        return grounds;
    }

    private static PartGrounds Given(PartGrounds grounds, int giver, int taker, Region ground)
    {
        var kept = Polygons.Subtract(grounds.Territories[giver], ground);
        // From both together: what is added to the taker would be parted from it by roundings.
        var both = Polygons.Union(grounds.Territories[giver], grounds.Territories[taker]);
        return grounds.On([
            .. grounds.Territories.Select(
                (territory, part) =>
                    part == giver ? kept
                    : part == taker ? Polygons.Subtract(both, kept)
                    : territory
            ),
        ]);
    }

    /// <summary>Along half a reach at least: corners that touch do not.</summary>
    /// <param name="beside">One of them, and a little around it.</param>
    private static bool LieSideBySide(Region beside, Region other, double reach) =>
        Polygons.Intersect(beside, other).Area >= Scraps.Beside * reach / 2;
}
