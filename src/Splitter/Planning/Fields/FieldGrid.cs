using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>
/// Columns and rows of fields, spread evenly, the outer ones flush with the edges of what is to be covered.
/// </summary>
internal static class FieldGrid
{
    internal static ImmutableArray<Field> Fields(Box cover, GridFields grid, FieldTemplate template)
    {
        var ground = template.Ground(template.At(default, grid.Turn));
        return
        [
            .. from row in Enumerable.Range(0, grid.Rows)
            from column in Enumerable.Range(0, grid.Columns)
            select template.At(
                new(
                    Spread(cover.Left, cover.Right, ground.Right, grid.Columns, column),
                    Spread(cover.Top, cover.Bottom, ground.Bottom, grid.Rows, row)
                ),
                grid.Turn
            ),
        ];
    }

    /// <summary>The fewest columns and rows whose fields cover a box and share ground that holds corners.</summary>
    internal static (int Columns, int Rows) Least(Box cover, Turn turn, FieldTemplate template, RegistrationRules rules)
    {
        var ground = template.Ground(template.At(default, turn));
        // Corners may lie where the artwork's stitches may not reach.
        var shared = Math.Max(0, CommonGround.Least(rules) - (2 * template.Reach));
        return (Count(cover.Width, ground.Width), Count(cover.Height, ground.Height));

        int Count(int length, int one) =>
            length <= Whole(one) ? 1
            : Whole(one) > shared ? 1 + Steps(length - Whole(one), Whole(one - shared))
            : Steps(length, Whole(one));

        static int Whole(int length) => Math.Max(Units.TapeStep, length / Units.TapeStep * Units.TapeStep);

        static int Steps(int length, int step) => (length + step - 1) / step;
    }

    /// <summary>
    /// A centre on the tape's grid. Outer ones are rounded outwards, so that the edge of what is covered lies in their
    /// ground; the steps between differ by one of the tape at most, so that no gap opens where another grid would have
    /// none.
    /// </summary>
    /// <param name="half">From a field's centre to the edge of its ground.</param>
    private static int Spread(int from, int to, int half, int count, int index)
    {
        var middle = Units.OnTape((int)(((long)from + to) >> 1));
        if (count == 1 || (middle - half <= from && middle + half >= to))
            return middle;
        var first = Units.DownOnTape(from + half);
        var steps = (Units.UpOnTape(to - half) - first) / Units.TapeStep;
        return first + ((int)((long)steps * index / (count - 1)) * Units.TapeStep);
    }
}
