using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Artwork.Tapes;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>
/// Shapes that a cut would spoil, though the recipe does not ask for them to stay whole: as many fields as it takes
/// anyway are placed so that they hold them.
/// </summary>
internal static class WantedWhole
{
    /// <summary>Where no layout holds all of them, none longer than the second is asked for, µm.</summary>
    private static readonly ImmutableArray<int> Longest = [int.MaxValue, RowGroups.SmallThing];

    /// <summary>
    /// Layouts of as many fields that hold more of them; one that does not stays, in case no other will do.
    /// </summary>
    /// <param name="any">Layouts that know nothing of them.</param>
    /// <param name="fewest">Layouts that hold those shapes.</param>
    /// <param name="isSound">Nothing is wrong with a layout.</param>
    internal static ImmutableArray<Layout> Kept(
        Drawing drawing,
        ImmutableArray<Layout> any,
        Func<Func<Box, bool>, ImmutableArray<Layout>> fewest,
        Func<Layout, bool> isSound
    )
    {
        if (any is not [var first, ..] || any.All(layout => Cut(drawing, layout).Count == 0))
            return any;
        foreach (var longest in Longest)
            if (
                fewest(box => Math.Max(box.Width, box.Height) <= longest) is [var best, ..] found
                && best.Fields.Length <= first.Fields.Length
                && isSound(best)
            )
                // The bound is to hold for plans that cut what they like, too.
                return [.. found.Select(layout => layout with { LowerBound = first.LowerBound }), first];
        return any;
    }

    /// <summary>Those that seams cut.</summary>
    internal static List<Shape> Cut(Drawing drawing, Layout layout) =>
        [
            .. drawing.Shapes.Where(shape =>
                shape.WantsWhole && !layout.Grounds.Any(ground => ground.Contains(shape.Footprint.Bounds))
            ),
        ];

    /// <summary>Says which of those that a field could hold are cut.</summary>
    internal static IEnumerable<Diagnostic> Warnings(Recipe recipe, Drawing drawing, Layout layout)
    {
        var hoop = layout.Fields[0].Hoop;
        var cut = Cut(drawing, layout)
            .Where(shape => FieldPlacer.CanHold(recipe, drawing, hoop, shape.Footprint.Bounds))
            .ToList();
        if (cut.Count > 0)
            yield return PlanProblems.WantedWholeIsCut(
                cut.MinBy(s => s.Footprint.Area)!,
                cut.Count - 1,
                recipe.Fields.Place is FewestFields,
                hoop
            );
    }
}
