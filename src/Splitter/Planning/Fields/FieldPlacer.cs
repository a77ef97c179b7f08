using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>Lays fields on the drawing as the recipe says, and sees that they cover it.</summary>
internal static class FieldPlacer
{
    internal static Result<Layout> Place(Recipe recipe, Drawing drawing, Hoop hoop)
    {
        // Stitches reach past the artwork's edge by the pull compensation, and by half a step of the tape.
        var reach = drawing.Shapes.Max(s => s.Style.Pull) + Units.TapeStep;
        var held = Folds.Held(recipe.Cloth, drawing.Bounds.Centre);
        var template = new FieldTemplate(hoop, recipe.Fields.Clearance, reach);
        var fields = recipe.Fields.Place switch
        {
            ListedFields listed => [.. listed.Fields.Select(f => template.At(f.Centre, f.Turn))],
            GridFields grid => Grid(drawing.Bounds.Joined(held ?? Box.Empty), grid, template),
            _ => FieldSweep.Cover(recipe, drawing, template, held),
        };
        var layout = new Layout(fields, [.. fields.Select(template.Ground)], LowerBound(drawing, template));
        return Result.From(layout, Coverage.Problems(recipe, drawing, layout, template));
    }

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

    /// <summary>
    /// Fields cannot sew more ground than they have. Sound, and weak where the drawing is sparse.
    /// </summary>
    private static int LowerBound(Drawing drawing, FieldTemplate template)
    {
        var ground = template.Ground(template.At(default, Turn.None));
        var sewn = Polygons.Union(drawing.Shapes.Select(s => s.Footprint)).Area;
        return Math.Max(1, (int)Math.Ceiling(sewn / ((double)ground.Width * ground.Height)));
    }
}
