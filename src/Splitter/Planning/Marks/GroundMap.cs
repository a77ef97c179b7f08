using System.Collections;
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
    private readonly int[] first;

    /// <summary>For each hooping the cells that it sews.</summary>
    private readonly BitArray[] sewn;

    internal GroundMap(Drawing drawing, Division division)
    {
        bounds = drawing.Bounds;
        columns = (bounds.Width / Cell) + 1;
        var rows = (bounds.Height / Cell) + 1;
        (across, down) = (Middles(bounds.Left, columns), Middles(bounds.Top, rows));
        first = new int[columns * rows];
        Array.Fill(first, Nobody);
        sewn = [.. division.Territories.Select(_ => new BitArray(first.Length))];

        var territory = new int[first.Length];
        Array.Fill(territory, Nobody);
        for (var i = 0; i < division.Territories.Length; i++)
            Cover(division.Territories[i], cell => territory[cell] = i);
        for (var s = 0; s < drawing.Shapes.Length; s++)
            Cover(
                drawing.Shapes[s].Footprint,
                cell =>
                {
                    var by = division.Owners[s] ?? territory[cell];
                    if (by == Nobody)
                        return;
                    first[cell] = Math.Min(first[cell], by);
                    sewn[by][cell] = true;
                }
            );
    }

    /// <summary>Something is sewn there before a hooping.</summary>
    internal bool IsSewnBefore(int hooping, Point at) => CellAt(at) is { } cell && first[cell] < hooping;

    /// <summary>Something is sewn there after one hooping and before another.</summary>
    internal bool IsSewnBetween(int earlier, int later, Point at)
    {
        if (CellAt(at) is { } cell)
            for (var hooping = earlier + 1; hooping < later; hooping++)
                if (sewn[hooping][cell])
                    return true;
        return false;
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
