using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Planning.Fields.Covering;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>Lays fields on the drawing as the recipe says, and sees that they cover it.</summary>
internal static class FieldPlacer
{
    internal static Result<Layout> Place(Recipe recipe, Drawing drawing, Hoop hoop)
    {
        // Stitches reach past the artwork's edge by the pull compensation, and by half a step of the tape.
        var reach = drawing.Shapes.Max(s => s.Style.Pull) + Units.TapeStep;
        var held = FirstField.Held(recipe, drawing.Bounds.Centre);
        var template = new FieldTemplate(hoop, recipe.Fields.Clearance, reach);
        var layout = recipe.Fields.Place switch
        {
            ListedFields listed => Bounded(Listed(listed.Fields, template)),
            GridFields grid => Bounded(Grid(drawing.Bounds.Joined(held ?? Box.Empty), grid, template)),
            _ => FewestFieldsOf(recipe, drawing, template, held),
        };
        return Result.From(layout, Coverage.Problems(recipe, drawing, layout, template));

        Layout Bounded(ImmutableArray<Field> placed)
        {
            ImmutableArray<Field> fields = [.. placed, .. Listed(recipe.Fields.Fixed, template)];
            return new(
                fields,
                [.. fields.Select(template.Ground)],
                PointBound.Of(CoverTask.Of(recipe, drawing, template, held), fields.Length)
            );
        }
    }

    private static Layout FewestFieldsOf(Recipe recipe, Drawing drawing, FieldTemplate template, Box? held)
    {
        var task = CoverTask.Of(recipe, drawing, template, held);
        var swept = FieldSweep.Cover(recipe, drawing, template, held);
        var free = task.Fixed.IsEmpty && task.Forbidden.IsEmpty;
        var answer = FewestSearch.Find(task, free ? swept : null);
        var grid = new CoverGrid(task, answer.Covers.SelectMany(c => c));
        var misfits = new Misfits(task, grid, held);
        var settling = new Settling(task, grid, misfits);
        // Where zones forbid every cover, what can be laid is laid, and Coverage says what is missing.
        var fields = answer.Covers.IsEmpty
            ? [.. task.Fixed, .. swept.Where(f => !task.Forbids(f))]
            : settling.Settled(answer.Covers)[0];
        return new(fields, [.. fields.Select(template.Ground)], answer.LowerBound);
    }

    private static ImmutableArray<Field> Listed(ImmutableArray<ListedField> fields, FieldTemplate template) =>
        [.. fields.Select(f => template.At(f.Centre, f.Turn))];

    /// <summary>Columns and rows spread evenly, the outer ones flush with the edges of what is to be covered.</summary>
    private static ImmutableArray<Field> Grid(Box cover, GridFields grid, FieldTemplate template)
    {
        var ground = template.Ground(template.At(default, grid.Turn));
        return
        [
            .. from row in Enumerable.Range(0, grid.Rows)
            from column in Enumerable.Range(0, grid.Columns)
            select template.At(
                new(
                    Spread(cover.Left, cover.Right, ground.Width, grid.Columns, column),
                    Spread(cover.Top, cover.Bottom, ground.Height, grid.Rows, row)
                ),
                grid.Turn
            ),
        ];

        static int Spread(int from, int to, int length, int count, int index) =>
            count == 1 || to - from <= length
                ? (int)(((long)from + to) / 2)
                : from + (length / 2) + (int)((long)(to - from - length) * index / (count - 1));
    }
}
