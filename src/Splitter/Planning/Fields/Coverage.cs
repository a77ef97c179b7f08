using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>Sees that every shape can be sewn: cut shapes by the fields together, keep-whole shapes by one.</summary>
internal static class Coverage
{
    internal static IEnumerable<Diagnostic> Problems(
        Recipe recipe,
        Drawing drawing,
        Layout layout,
        FieldTemplate template
    )
    {
        var place = recipe.PlaceOf("fields.place");
        var size = template.Ground(template.At(default, Turn.None));
        var all = Polygons.Union(layout.Grounds.Select(Region.Of));
        if (recipe.Cloth.OnDrawing is { } cloth && !cloth.Contains(drawing.Bounds))
            yield return PlanProblems.ArtworkOffCloth(recipe.PlaceOf("cloth.size"), drawing.Bounds, cloth);
        foreach (var shape in drawing.Shapes)
        {
            var box = shape.Footprint.Bounds;
            if (shape.KeepWhole && !layout.Grounds.Any(g => g.Contains(box)))
            {
                yield return Fits(size, box)
                    ? PlanProblems.WholeShapeDivided(place, shape, Outside(layout, box), template.Hoop)
                    : PlanProblems.WholeShapeTooLarge(shape, size, template.Hoop);
                continue;
            }
            if (layout.Grounds.Any(g => g.Contains(box)))
                continue;
            var missed = Polygons.Subtract(shape.Footprint, all);
            if (!missed.IsEmpty)
            {
                var worst = missed
                    .Rings.SelectMany(r => r.Points)
                    .Select(p => (By: layout.Grounds.Min(g => Distance(g, p)), At: p))
                    .Max();
                yield return PlanProblems.ShapeSticksOut(place, shape, worst.At, worst.By, template.Hoop);
            }
        }
        if (
            Folds.Held(recipe.Cloth, drawing.Bounds.Centre) is { } held
            && !layout.Fields.Any(f => f.Usable.Contains(held))
        )
            yield return PlanProblems.FoldsNotHeld(recipe.PlaceOf("cloth.folds"), held, template.Hoop);
        if (
            recipe.Fields.First is { } first
            && FirstField.Held(recipe, drawing.Bounds.Centre) is { } together
            && !layout.Fields.Any(f => f.Usable.Contains(together))
        )
            yield return PlanProblems.FirstNotHeld(
                recipe.PlaceOf("fields.first"),
                first,
                recipe.Cloth is { UprightFold: not null, LevelFold: not null },
                template.Hoop
            );
        foreach (var (i, zone) in recipe.Fields.Forbidden.Index())
        foreach (var field in layout.Fields.Where(f => Overlap(f.Bounds, zone)))
            yield return PlanProblems.FieldOverForbidden(
                recipe.PlaceOf(FormattableString.Invariant($"fields.forbidden[{i}]")),
                field,
                zone
            );
    }

    /// <summary>Boxes share ground, not just an edge.</summary>
    internal static bool Overlap(Box a, Box b) =>
        a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom;

    private static bool Fits(Box ground, Box box) =>
        (box.Width <= ground.Width && box.Height <= ground.Height)
        || (box.Width <= ground.Height && box.Height <= ground.Width);

    /// <summary>By how much a box sticks out of the ground that nearly holds it.</summary>
    private static int Outside(Layout layout, Box box) =>
        layout.Grounds.Min(g =>
            Math.Max(Math.Max(g.Left - box.Left, box.Right - g.Right), Math.Max(g.Top - box.Top, box.Bottom - g.Bottom))
        );

    private static double Distance(Box box, Point p)
    {
        double dx = Math.Max(0, Math.Max(box.Left - p.X, p.X - box.Right));
        double dy = Math.Max(0, Math.Max(box.Top - p.Y, p.Y - box.Bottom));
        return Math.Sqrt((dx * dx) + (dy * dy));
    }
}
