using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Seams;

/// <summary>Divides the drawing among the fields of a layout, along seams where the recipe wants them.</summary>
internal static class Divider
{
    /// <summary>
    /// Seams stay this far away from where a field ends, µm, when the overlap is worked out: that needs 2 mm or less on
    /// most drawings. Common practice, no source.
    /// </summary>
    private const int Margin = 3 * Units.Millimetre;

    internal static Division Divide(OverlapRules rules, Drawing drawing, Layout layout)
    {
        var surface = new Surface(drawing, layout.Grounds);
        var territories = StraightSeams.Territories(layout.Grounds);
        var seams = SeamTracer.Trace(territories);
        var straightCost = SeamPrice.Of(surface, seams);
        var cost = straightCost;
        if (
            rules.Seams == SeamRule.LeastVisible
            && LeastVisible.Territories(surface, layout.Grounds, territories, rules.Width ?? Margin) is { } hidden
        )
        {
            var hiddenSeams = SeamTracer.Trace(hidden);
            var hiddenCost = SeamPrice.Of(surface, hiddenSeams);
            if (hiddenCost < straightCost)
                (territories, seams, cost) = (hidden, hiddenSeams, hiddenCost);
        }
        ImmutableArray<int?> owners = [.. drawing.Shapes.Select(s => Owner(s, layout.Grounds, territories))];
        ImmutableArray<Crossing> crossings =
        [
            .. from shape in Enumerable.Range(0, drawing.Shapes.Length)
            where owners[shape] is null
            from seam in seams
            from line in surface.Clipping(shape).Inside(seam.Line)
            select new Crossing(seam.Earlier, seam.Later, shape, line),
        ];
        return new(territories, owners, seams, crossings, new(cost, straightCost, owners.Count(o => o is null)));
    }

    /// <summary>A shape that fits a field is not cut: it goes to the field that has most of it anyway.</summary>
    private static int? Owner(Shape shape, ImmutableArray<Box> grounds, ImmutableArray<Region> territories)
    {
        var box = shape.Footprint.Bounds;
        var candidates = Enumerable.Range(0, grounds.Length).Where(i => grounds[i].Contains(box)).ToList();
        return candidates.Count switch
        {
            0 => null,
            1 => candidates[0],
            _ => candidates
                .OrderByDescending(i => Polygons.Intersect(territories[i], shape.Footprint).Area)
                .ThenBy(i => i)
                .First(),
        };
    }
}
