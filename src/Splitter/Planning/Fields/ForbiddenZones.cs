using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>Says which forbidden zones keep a drawing from being covered.</summary>
internal static class ForbiddenZones
{
    /// <summary>
    /// One line for each zone that keeps ground from being sewn; where none does so alone, one for all of them.
    /// </summary>
    /// <param name="held">What the first field has to hold; null for nothing.</param>
    internal static ImmutableArray<Diagnostic> Problems(
        Recipe recipe,
        Drawing drawing,
        FieldTemplate template,
        Box? held
    )
    {
        var zones = recipe.Fields.Forbidden;
        ImmutableArray<Diagnostic> alone =
        [
            .. zones
                .Select((zone, i) => Problem([zone], FormattableString.Invariant($"fields.forbidden[{i}]")))
                .OfType<Diagnostic>(),
        ];
        if (!alone.IsEmpty)
            return alone;
        return
        [
            Problem(zones, "fields.forbidden")
                ?? ZoneProblems.ZonesPartFields(recipe.PlaceOf("fields.forbidden"), template.Hoop),
        ];

        Diagnostic? Problem(ImmutableArray<Box> some, string key)
        {
            var free = FreeGround.Of(template, some, drawing.Bounds);
            var place = recipe.PlaceOf(key);
            if (free.Ground.IsEmpty || !drawing.Shapes.Any(s => Touches(free, s)))
                return ZoneProblems.NoFieldAnywhere(place, some, template.Hoop);
            var missed = Missed(drawing, template, free).ToList();
            if (missed.Count > 0)
                return ZoneProblems.ZoneKeepsGround(
                    place,
                    some,
                    template.Clearance + template.Reach,
                    missed.ConvertAll(m => m.Shape),
                    Box.Around(missed.Select(m => m.Ground)),
                    template.Hoop
                );
            return held is { } box && !Holding(template, some, box)
                ? ZoneProblems.ZoneKeepsFirst(place, some, box, template.Hoop)
                : null;
        }
    }

    private static bool Touches(FreeGround free, Shape shape) =>
        !Polygons.Intersect(shape.Footprint, free.Ground).IsEmpty;

    /// <summary>
    /// Folds and a first point need not be drawn upon, and are held up to the edge of the usable field.
    /// </summary>
    private static bool Holding(FieldTemplate template, ImmutableArray<Box> zones, Box held) =>
        FreeGround.Of(template with { Reach = 0 }, zones, held).Holds(held);

    /// <summary>The shapes that fields clear of the zones cannot sew, and the ground of each that is left.</summary>
    private static IEnumerable<(Shape Shape, Box Ground)> Missed(
        Drawing drawing,
        FieldTemplate template,
        FreeGround free
    )
    {
        foreach (var shape in drawing.Shapes)
        {
            var box = shape.Footprint.Bounds;
            if (free.Holds(box))
                continue;
            // A shape that no field holds whole, zone or not, is reported elsewhere.
            var missed =
                shape.KeepWhole && template.Fits(box)
                    ? shape.Footprint
                    : Polygons.Subtract(shape.Footprint, free.Ground);
            if (!missed.IsEmpty)
                yield return (shape, missed.Bounds);
        }
    }
}
