using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Planning.Fields.Covering;
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
        if (layout.Fields.IsEmpty)
        {
            yield return PlanProblems.NoCover(recipe.PlaceOf("fields.place"), template.Hoop);
            yield break;
        }
        foreach (var problem in Shapes(recipe, drawing, layout, template))
            yield return problem;
        if (
            FirstField.Held(recipe, drawing.Bounds.Centre) is { } held
            && !layout.Fields.Any(f => f.Usable.Contains(held))
        )
            yield return recipe.Fields.First is { } first
                ? PlanProblems.FirstNotHeld(
                    recipe.PlaceOf("fields.first"),
                    first,
                    Folds.Crossing(recipe.Cloth),
                    (template with { Reach = 0 }).Fits(held),
                    template.Hoop
                )
                : PlanProblems.FoldsNotHeld(
                    recipe.PlaceOf("cloth.folds"),
                    held,
                    (template with { Reach = 0 }).Fits(held),
                    template.Hoop
                );
        foreach (var problem in OverZones(recipe, layout.Fields).Concat(ThroatRoom.Problems(recipe, layout, template)))
            yield return problem;
    }

    /// <summary>Fields that lie over forbidden zones: a line for each zone.</summary>
    internal static IEnumerable<Diagnostic> OverZones(Recipe recipe, IReadOnlyList<Field> fields)
    {
        foreach (var (i, zone) in recipe.Fields.Forbidden.Index())
            if (fields.Where(f => Overlap(f.Bounds, zone)).ToList() is { Count: > 0 } over)
                yield return ZoneProblems.FieldOverForbidden(
                    recipe.PlaceOf(FormattableString.Invariant($"fields.forbidden[{i}]")),
                    over,
                    zone,
                    recipe.Fields.Place is GridFields
                );
    }

    /// <summary>
    /// The worst shape that sticks out of all fields, and the worst whole one that is divided, stand for all such.
    /// </summary>
    private static IEnumerable<Diagnostic> Shapes(Recipe recipe, Drawing drawing, Layout layout, FieldTemplate template)
    {
        var place = recipe.PlaceOf("fields.place");
        var size = template.Ground(template.At(default, template.Turns[0]));
        var all = Polygons.Union(layout.Grounds.Select(Region.Of));
        var missing = new List<(double By, Point At, Shape Shape)>();
        var divided = new List<(int By, Shape Shape)>();
        foreach (var shape in drawing.Shapes)
        {
            var box = shape.Footprint.Bounds;
            if (layout.Grounds.Any(g => g.Contains(box)))
                continue;
            if (shape.KeepWhole && template.Fits(box))
                divided.Add((Outside(layout, box), shape));
            else if (shape.KeepWhole)
                yield return PlanProblems.WholeShapeTooLarge(
                    shape,
                    size,
                    LargerField.Advice(recipe, template, box),
                    template.Hoop
                );
            // The engine is asked about the few that may.
            else if (
                SticksOut(shape.Footprint, layout.Grounds)
                && Polygons.Subtract(shape.Footprint, all) is { IsEmpty: false } missed
            )
            {
                var worst = missed
                    .Rings.SelectMany(r => r.Points)
                    .Select(p => (By: layout.Grounds.Min(g => Distance(g, p)), At: p))
                    .Max();
                missing.Add((worst.By, worst.At, shape));
            }
        }
        if (divided.Count > 0)
        {
            var worst = divided.MaxBy(d => d.By);
            yield return PlanProblems.WholeShapeDivided(place, worst.Shape, worst.By, divided.Count - 1, template.Hoop);
        }
        if (missing.Count > 0)
        {
            var worst = missing.MaxBy(o => o.By);
            yield return PlanProblems.ShapeSticksOut(
                place,
                worst.Shape,
                worst.At,
                worst.By,
                missing.Count - 1,
                Advice(recipe, drawing, template),
                template.Hoop
            );
        }
    }

    /// <summary>What can be written where shapes stick out of the fields.</summary>
    private static string Advice(Recipe recipe, Drawing drawing, FieldTemplate template)
    {
        if (recipe.Fields.Place is not GridFields grid)
            return recipe.Fields.Place is ListedFields
                ? "add a field there, move one, or write 'place: fewest'"
                : "lay a field there under 'fields.fixed', or take a larger hoop";
        var cover = drawing.Bounds.Joined(FirstField.Held(recipe, drawing.Bounds.Centre) ?? Box.Empty);
        var (columns, rows) = Least(template);
        var closer = Least(template with { Clearance = 0 });
        var clearance =
            closer.Columns <= grid.Columns && closer.Rows <= grid.Rows ? ", or a smaller 'fields.clearance'" : "";
        return FormattableString.Invariant($"write 'columns: {Math.Max(columns, grid.Columns)}' and 'rows: ")
            + FormattableString.Invariant($"{Math.Max(rows, grid.Rows)}' or more{clearance}");

        (int Columns, int Rows) Least(FieldTemplate by) => FieldGrid.Least(cover, grid.Turn, by, recipe.Registration);
    }

    /// <summary>Boxes share ground, not just an edge.</summary>
    internal static bool Overlap(Box a, Box b) =>
        a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom;

    /// <summary>
    /// Something of a shape lies outside all grounds: on one of the pieces that their edges cut its box into, and no
    /// ground holds.
    /// </summary>
    private static bool SticksOut(Region shape, ImmutableArray<Box> grounds)
    {
        var box = shape.Bounds;
        ImmutableArray<Box> near = [.. grounds.Where(g => Overlap(g, box))];
        var xs = Lines(near.SelectMany(g => new[] { g.Left, g.Right }), box.Left, box.Right);
        var ys = Lines(near.SelectMany(g => new[] { g.Top, g.Bottom }), box.Top, box.Bottom);
        var bare = (
            from row in Enumerable.Range(0, ys.Length - 1)
            from column in Enumerable.Range(0, xs.Length - 1)
            let piece = new Box(xs[column], ys[row], xs[column + 1], ys[row + 1])
            where !near.Any(g => g.Contains(piece))
            select (column, row)
        ).ToList();
        if (bare.Count == 0)
            return false;
        var cells = new DrawnCells([shape], xs, ys);
        return bare.Exists(cell => cells.Touched(cell.column, cell.row));

        static int[] Lines(IEnumerable<int> edges, int from, int to) =>
            [.. edges.Where(e => e > from && e < to).Append(from).Append(to).Distinct().Order()];
    }

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
