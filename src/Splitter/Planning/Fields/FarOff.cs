using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>
/// Names what lies beside the cloth, and what a recipe places so far off that hoopings would be empty: they cost as
/// much as others, and fields that link them to the rest come on top. Known before any field is laid.
/// </summary>
internal static class FarOff
{
    internal static IEnumerable<Diagnostic> Problems(Recipe recipe, Drawing drawing, FieldTemplate template)
    {
        var cloth = recipe.Cloth.OnDrawing;
        if (recipe.Fields.First is { } first)
        {
            var place = recipe.PlaceOf("fields.first");
            if (cloth is { } box && !box.Contains(first))
                yield return FieldProblems.FirstOffCloth(place, first, box);
            else if (!template.Turns.Any(turn => Sews(drawing, Reached(template, first, turn))))
                yield return FieldProblems.FirstFarOff(place, first, drawing.Bounds, template.Hoop);
        }
        foreach (var (field, place) in HandPlaced.Of(recipe, template))
        {
            if (cloth is { } box && !Coverage.Overlap(field.Bounds, box))
                yield return FieldProblems.FieldOffCloth(place, field, box);
        }
    }

    /// <summary>What fields can sew that hold a point.</summary>
    private static Box Reached(FieldTemplate template, Point at, Turn turn)
    {
        var field = template.At(default, turn);
        var (around, ground) = (field.Usable, template.Ground(field));
        return new(
            at.X + around.Left + ground.Left,
            at.Y + around.Top + ground.Top,
            at.X + around.Right + ground.Right,
            at.Y + around.Bottom + ground.Bottom
        );
    }

    /// <summary>Something of the drawing comes into a ground.</summary>
    internal static bool Sews(Drawing drawing, Box ground) =>
        drawing.Shapes.Any(shape =>
            shape.Footprint.Bounds.Meets(ground) && !Polygons.Intersect(shape.Footprint, Region.Of(ground)).IsEmpty
        );
}
