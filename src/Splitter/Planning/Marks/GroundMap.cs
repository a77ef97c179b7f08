using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Planning.Marks;

/// <summary>Which hoopings sew on each square millimetre of cloth.</summary>
internal sealed class GroundMap
{
    /// <summary>
    /// Side of a cell, µm: finer than the arms of a corner need, coarse enough for a whole bedspread.
    /// </summary>
    private const int Cell = Units.Millimetre;

    /// <summary>A hooping that comes after all.</summary>
    private const int Nobody = int.MaxValue;

    private readonly Box bounds;
    private readonly int columns;
    private readonly double[] across;
    private readonly double[] down;

    /// <summary>For each cell the first hooping that sews there.</summary>
    private readonly SparseArray<int> first;

    /// <summary>For each cell that more than one hooping sews, all of them.</summary>
    private readonly Dictionary<int, SortedSet<int>> more = [];

    internal GroundMap(Drawing drawing, Division division)
    {
        bounds = drawing.Bounds;
        columns = (bounds.Width / Cell) + 1;
        var rows = (bounds.Height / Cell) + 1;
        (across, down) = (Middles(bounds.Left, columns), Middles(bounds.Top, rows));
        first = new(columns * rows, Nobody);
        var territory = new SparseArray<int>(columns * rows, Nobody);
        for (var i = 0; i < division.Territories.Length; i++)
            Cover(division.Territories[i], cell => territory.At(cell) = i);
        for (var s = 0; s < drawing.Shapes.Length; s++)
            Cover(
                drawing.Shapes[s].Footprint,
                cell =>
                {
                    if ((division.Owners[s] ?? territory[cell]) is not Nobody and var by)
                        Sew(cell, by);
                }
            );
    }

    /// <summary>Something is sewn there before a hooping.</summary>
    internal bool IsSewnBefore(int hooping, Point at) => CellAt(at) is { } cell && first[cell] < hooping;

    /// <summary>Something is sewn there after one hooping and before another.</summary>
    internal bool IsSewnBetween(int earlier, int later, Point at) =>
        CellAt(at) is { } cell
        && first[cell] < later
        && (
            earlier < first[cell]
            || (more.TryGetValue(cell, out var all) && all.Any(hooping => earlier < hooping && hooping < later))
        );

    private void Sew(int cell, int by)
    {
        ref var before = ref first.At(cell);
        if (before == Nobody)
            before = by;
        if (before == by)
            return;
        if (!more.TryGetValue(cell, out var all))
            more[cell] = all = [before];
        all.Add(by);
        before = Math.Min(before, by);
    }

    private int? CellAt(Point at) =>
        bounds.Contains(at) ? ((at.Y - bounds.Top) / Cell * columns) + ((at.X - bounds.Left) / Cell) : null;

    /// <summary>Visits the cells whose middles lie in a region.</summary>
    private void Cover(Region region, Action<int> visit) =>
        Scan.Cover(
            region,
            across,
            down,
            (row, from, to) =>
            {
                for (var column = from; column <= to; column++)
                    visit((row * columns) + column);
            }
        );

    private static double[] Middles(int from, int count) =>
        [.. Enumerable.Range(0, count).Select(i => from + (i * (double)Cell) + (Cell / 2))];
}
