using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>
/// A plain cover, where the search for the fewest fields starts: rows from the top, in each row fields from the left,
/// each flush with the first thing that no field before it sews. Rows and neighbours share the common ground that corners
/// need. Both ways to turn the hoop are tried, the one with fewer fields is taken.
/// </summary>
internal static class FieldSweep
{
    internal static ImmutableArray<Field> Cover(Recipe recipe, Drawing drawing, FieldTemplate template, Box? held)
    {
        // Common ground lies between usable fields, which are larger than the grounds by the stitches' reach.
        var common = CommonGround.Narrowest(recipe.Registration) - (2 * template.Reach) + Units.TapeStep;
        var drawn = Polygons.Union(drawing.Shapes.Where(s => !s.KeepWhole).Select(s => s.Footprint));
        var upright = Swept(Turn.None);
        var turned = Swept(Turn.Quarter);
        return turned.Length < upright.Length ? turned : upright;

        ImmutableArray<Field> Swept(Turn turn)
        {
            var size = template.Ground(template.At(default, turn));
            bool Fits(Box box) =>
                box.Width <= size.Width - Units.TapeStep && box.Height <= size.Height - Units.TapeStep;

            // Shapes that no field can hold although they must stay whole are reported by Coverage; here they are cut.
            var kept = drawing.Shapes.Where(s => s.KeepWhole).ToLookup(s => Fits(s.Footprint.Bounds), s => s.Footprint);
            List<Box> wholes = [.. kept[true].Select(f => f.Bounds)];
            if (held is { } box && Fits(box))
                wholes.Add(box);
            var rest = Polygons.Union(kept[false].Prepend(drawn));
            return Bridges.Added(Rows(rest, wholes, template, turn, common), recipe.Registration, template);
        }
    }

    private static ImmutableArray<Field> Rows(
        Region rest,
        List<Box> wholes,
        FieldTemplate template,
        Turn turn,
        int common
    )
    {
        var size = template.Ground(template.At(default, turn));
        var (width, height) = (size.Width, size.Height);
        var fields = ImmutableArray.CreateBuilder<Field>();
        var rowBottom = (int?)null;
        while (!rest.IsEmpty || wholes.Count > 0)
        {
            var top = Math.Min(rest.Bounds.Top, wholes.Select(w => w.Top).DefaultIfEmpty(int.MaxValue).Min());
            top = Math.Min(top, rowBottom - common ?? top);
            var band = rest.Bounds with { Top = top, Bottom = top + height - Units.TapeStep };
            var inRow = Polygons.Intersect(rest, Region.Of(band));
            var wholesInRow = wholes.Where(w => w.Bottom <= band.Bottom).ToList();
            rowBottom = band.Bottom;
            var fieldRight = (int?)null;
            while (!inRow.IsEmpty || wholesInRow.Count > 0)
            {
                var left = Math.Min(
                    inRow.Bounds.Left,
                    wholesInRow.Select(w => w.Left).DefaultIfEmpty(int.MaxValue).Min()
                );
                left = Math.Min(left, fieldRight - common ?? left);
                // Half a tape step to spare on both sides: the centre moves to the grid.
                var half = Units.TapeStep / 2;
                var field = template.At(new(left + (width / 2) - half, top + (height / 2) - half), turn);
                var ground = template.Ground(field);
                fields.Add(field);
                inRow = Polygons.Subtract(inRow, Region.Of(ground));
                rest = Polygons.Subtract(rest, Region.Of(ground));
                wholesInRow.RemoveAll(w => ground.Contains(w));
                wholes.RemoveAll(w => ground.Contains(w));
                fieldRight = ground.Right;
                rowBottom = ground.Bottom;
            }
        }
        return fields.ToImmutable();
    }
}
