using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// Finds where the sewing order turns the drawing's layers round. Two shapes that seams cut keep theirs: at any place one
/// hooping sews both. A shape that stays whole may be sewn in another hooping than what lies under or over it.
/// </summary>
internal static class TurnedLayers
{
    /// <summary>Less ground than this is not worth a word, µm²: a tenth of a square millimetre, a stitch or two.</summary>
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
            // Sewn by one hooping each: either in order, or all of it turned.
            if (owners[lower] is { } below && owners[upper] is { } above && below <= above)
                continue;
            if (owners[lower] is null && owners[upper] is null)
                continue;
            var common = Polygons.Intersect(shapes[lower].Footprint, shapes[upper].Footprint);
            if (common.Area < Nothing)
                continue;
            foreach (var first in Hoopings(upper))
            foreach (var then in Hoopings(lower))
            {
                if (first >= then)
                    continue;
                var ground = Ground(first, upper, Ground(then, lower, common));
                if (ground.Area >= Nothing)
                    found.Add(new(upper, lower, first, then, ground.Bounds.Centre, ground.Area));
            }
        }
        return found.ToImmutable();

        IEnumerable<int> Hoopings(int shape) =>
            owners[shape] is { } owner
                ? [owner]
                : Enumerable
                    .Range(0, territories.Length)
                    .Where(h => territories[h].Bounds.Meets(shapes[shape].Footprint.Bounds));

        Region Ground(int hooping, int shape, Region within) =>
            owners[shape] is null ? Polygons.Intersect(territories[hooping], within) : within;
    }
}
