using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// Finds where the sewing order turns the drawing's layers round. Two shapes that seams cut keep theirs: at any place
/// one hooping sews both. A shape that stays whole may be sewn in another hooping than what lies under or over it.
/// </summary>
internal static class TurnedLayers
{
    /// <summary>
    /// Less ground than this is not worth a word, µm²: a tenth of a square millimetre, a stitch or two.
    /// </summary>
    private const double Nothing = 100_000;

    internal static ImmutableArray<TurnedLayer> Find(
        Drawing drawing,
        ImmutableArray<Region> territories,
        ImmutableArray<int?> owners
    )
    {
        var shapes = drawing.Shapes;
        var found = ImmutableArray.CreateBuilder<TurnedLayer>();
        foreach (var (lower, upper) in BoxPairs.Meeting(shapes.Select(s => s.Footprint.Bounds)))
        {
            if (owners[lower] is null && owners[upper] is null)
                continue;
            // By boxes first: hardly any of thousands of small shapes on a ground is sewn before it.
            var box = shapes[lower].Footprint.Bounds.Common(shapes[upper].Footprint.Bounds);
            if (!Turns(lower, upper, box).Any())
                continue;
            var common = Polygons.Intersect(shapes[lower].Footprint, shapes[upper].Footprint);
            if (common.Area < Nothing)
                continue;
            foreach (var (first, then) in Turns(lower, upper, common.Bounds))
            {
                var ground = Ground(first, upper, Ground(then, lower, common));
                if (ground.Area >= Nothing)
                    found.Add(new(upper, lower, first, then, ground.Bounds.Centre, ground.Area));
            }
        }
        return found.ToImmutable();

        // The hoopings that may sew the upper shape before another sews the lower one.
        IEnumerable<(int First, int Then)> Turns(int lower, int upper, Box box) =>
            from first in Hoopings(upper, box)
            from then in Hoopings(lower, box)
            where first < then
            select (first, then);

        IEnumerable<int> Hoopings(int shape, Box box) =>
            owners[shape] is { } owner
                ? [owner]
                : Enumerable.Range(0, territories.Length).Where(h => territories[h].Bounds.Meets(box));

        Region Ground(int hooping, int shape, Region within) =>
            owners[shape] is null ? Polygons.Intersect(territories[hooping], within) : within;
    }
}
