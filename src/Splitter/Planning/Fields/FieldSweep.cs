using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>
/// A plain cover: rows from the top, in each row fields from the left, each flush with the first thing that no field
/// before it sews. Rows and neighbours share the common ground that corners need. Both ways to turn the hoop are tried,
/// the one with fewer fields is taken.
/// </summary>
internal static class FieldSweep
{
    internal static ImmutableArray<Field> Cover(Recipe recipe, Drawing drawing, FieldTemplate template, Box? held)
    {
        // Common ground lies between usable fields, which are larger than the grounds by the stitches' reach.
        var common = CommonGround.Narrowest(recipe.Registration) - (2 * template.Reach) + Units.TapeStep;
        var upright = Reachable(Turn.None);
        var turned = Reachable(Turn.Quarter);
        return turned.Length < upright.Length ? turned : upright;

        ImmutableArray<Field> Reachable(Turn turn)
        {
            var ways = FieldSpread
                .Ways(Rows(drawing, template, turn, common, held), drawing, template, held)
                .Select(fields => Bridges.Added(fields, recipe.Registration, template))
                .ToList();
            // Spreading must neither uncover anything nor take fields apart that could hand on corners.
            return ways.First(fields => fields == ways[^1] || (fields.Length == ways[^1].Length && Covers(fields)));
        }

        bool Covers(ImmutableArray<Field> fields) =>
            !Coverage.Problems(recipe, drawing, new(fields, [.. fields.Select(template.Ground)], 1), template).Any();
    }

    /// <summary>Fields by rows.</summary>
    private static ImmutableArray<ImmutableArray<Field>> Rows(
        Drawing drawing,
        FieldTemplate template,
        Turn turn,
        int common,
        Box? held
    )
    {
        var size = template.Ground(template.At(default, turn));
        var (width, height) = (size.Width, size.Height);
        bool Fits(Box box) => box.Width <= width - Units.TapeStep && box.Height <= height - Units.TapeStep;

        // Shapes that no field can hold although they must stay whole are reported by Coverage; here they are cut.
        List<Box> wholes =
        [
            .. drawing.Shapes.Where(s => s.KeepWhole && Fits(s.Footprint.Bounds)).Select(s => s.Footprint.Bounds),
        ];
        if (held is { } box && Fits(box))
            wholes.Add(box);
        var rest = Polygons.Union(
            drawing.Shapes.Where(s => !s.KeepWhole || !Fits(s.Footprint.Bounds)).Select(s => s.Footprint)
        );
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<Field>>();
        var rowBottom = (int?)null;
        while (!rest.IsEmpty || wholes.Count > 0)
        {
            var top = Math.Min(rest.Bounds.Top, wholes.Select(w => w.Top).DefaultIfEmpty(int.MaxValue).Min());
            top = Math.Min(top, rowBottom - common ?? top);
            var band = rest.Bounds with { Top = top, Bottom = top + height - Units.TapeStep };
            var inRow = Polygons.Intersect(rest, Region.Of(band));
            var wholesInRow = wholes.Where(w => w.Bottom <= band.Bottom).ToList();
            var fields = ImmutableArray.CreateBuilder<Field>();
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
            if (fieldRight is null)
                rowBottom = band.Bottom;
            else
                rows.Add(fields.ToImmutable());
        }
        return rows.ToImmutable();
    }
}
