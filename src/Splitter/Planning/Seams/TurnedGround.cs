using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// What a seam between two fields costs for the ground beside it on which layers are turned round. Green's theorem
/// makes that a sum along the seam: how much more ground to the left of a place is turned when the one field sews it
/// than when the other does, times the step down the drawing. So ways between the same two ends are compared without
/// their areas.
/// </summary>
/// <param name="right">The field on the right as one walks along the seam.</param>
/// <param name="left">The field on its left.</param>
/// <param name="owners">For each shape that stays whole the field that sews it.</param>
/// <param name="within">The ways lie in here.</param>
internal sealed class TurnedGround(
    SeamGrid grid,
    LayerMap layers,
    ImmutableArray<int?> owners,
    int right,
    int left,
    Box within
)
{
    private readonly int firstColumn = grid.ColumnOf(within.Left);
    private readonly int lastColumn = grid.ColumnOf(within.Right);

    /// <summary>
    /// By rows of the grid, for each of its rows of places: where the sum grows, rising, and what it is then. Empty
    /// where nothing is turned in all of a row.
    /// </summary>
    private readonly Dictionary<int, List<(double X, double Sum)>[]> sums = [];

    /// <summary>What a straight stretch adds or takes away, mm of plain fill.</summary>
    internal double Of(Point from, Point to)
    {
        if (from.Y > to.Y)
            return -Of(to, from);
        var sum = 0.0;
        var last = grid.RowOf(to.Y);
        for (var row = grid.RowOf(from.Y); row <= last; row++)
        {
            if (!sums.TryGetValue(row, out var parts))
                sums[row] = parts = Parts(row);
            var (top, height) = (grid.Y[row], (grid.Y[row + 1] - grid.Y[row]) / (double)LayerMap.Parts);
            for (var part = 0; part < parts.Length; part++)
            {
                if (parts[part].Count == 0)
                    continue;
                var (upper, lower) = (
                    Math.Max(from.Y, top + (part * height)),
                    Math.Min(to.Y, top + ((part + 1) * height))
                );
                if (upper >= lower)
                    continue;
                var share = (((upper + lower) / 2) - from.Y) / (to.Y - (double)from.Y);
                sum += (lower - upper) * Before(parts[part], from.X + ((to.X - (double)from.X) * share));
            }
        }
        return sum * SeamPrice.Turned / (Units.Millimetre * (double)Units.Millimetre);
    }

    private static double Before(List<(double X, double Sum)> part, double x)
    {
        // By halves: the list's own search would compare sums as well, in generic code.
        var (next, end) = (0, part.Count);
        while (next < end)
        {
            var middle = (next + end) / 2;
            (next, end) = part[middle].X < x ? (middle + 1, end) : (next, middle);
        }
        return next > 0 ? part[next - 1].Sum : 0;
    }

    private List<(double X, double Sum)>[] Parts(int row)
    {
        var parts = new List<(double X, double Sum)>[LayerMap.Parts];
        for (var part = 0; part < parts.Length; part++)
            parts[part] = [];
        var balance = new int[LayerMap.Places];
        for (var column = firstColumn; column <= lastColumn; column++)
        {
            Array.Clear(balance);
            foreach (var (upper, lower, places) in layers.Pairs(grid.CellAt(column, row)))
                if (Turns(upper, lower, right) - Turns(upper, lower, left) is not 0 and var more)
                    for (var place = 0; place < balance.Length; place++)
                        balance[place] += (places >> place & 1) == 0 ? 0 : more;
            var width = (grid.X[column + 1] - grid.X[column]) / (double)LayerMap.Parts;
            for (var place = 0; place < balance.Length; place++)
                if (balance[place] != 0)
                {
                    var part = parts[place / LayerMap.Parts];
                    var before = part.Count == 0 ? 0 : part[^1].Sum;
                    var middle = grid.X[column] + (((place % LayerMap.Parts) + 0.5) * width);
                    part.Add((middle, before + (balance[place] * width)));
                }
        }
        return Array.TrueForAll(parts, part => part.Count == 0) ? [] : parts;
    }

    /// <summary>1 where the upper shape is sewn before the lower one when this field sews the ground. </summary>
    private int Turns(int upper, int lower, int field) => (owners[upper] ?? field) < (owners[lower] ?? field) ? 1 : 0;
}
