using System.Collections.Immutable;

namespace Splitter.Geometry;

/// <summary>A square of a grid over the drawing, by its column and row; cell 0, 0 begins at the origin.</summary>
internal readonly record struct Cell(int Column, int Row)
{
    public static Cell operator +(Cell a, Cell b) => new(a.Column + b.Column, a.Row + b.Row);
}

/// <summary>
/// Outlines of ground made of whole cells, holes turning the other way: drawn as one area, no hair of what lies below
/// shows between two cells.
/// </summary>
internal static class CellOutlines
{
    /// <summary>
    /// Corners of a cell clockwise from the top left one, and the step along the side that begins there.
    /// </summary>
    private static readonly ImmutableArray<(Cell Corner, Cell Along, Cell Outside)> Sides =
    [
        (new(0, 0), new(1, 0), new(0, -1)),
        (new(1, 0), new(0, 1), new(1, 0)),
        (new(1, 1), new(-1, 0), new(0, 1)),
        (new(0, 1), new(0, -1), new(-1, 0)),
    ];

    /// <param name="cells">In any order that is always the same.</param>
    /// <param name="side">Of a cell, µm.</param>
    internal static ImmutableArray<ImmutableArray<Point>> Of(ImmutableArray<Cell> cells, int side) =>
        Of(cells, cells.ToHashSet().Contains, side);

    /// <inheritdoc cref="Of(ImmutableArray{Cell}, int)"/>
    /// <param name="contains">Whether a cell is one of them.</param>
    internal static ImmutableArray<ImmutableArray<Point>> Of(
        IEnumerable<Cell> cells,
        Func<Cell, bool> contains,
        int side
    )
    {
        // Where two cells touch at a corner, two sides begin there.
        var begins = new Dictionary<Cell, List<int>>();
        foreach (var cell in cells)
            for (var i = 0; i < Sides.Length; i++)
                if (!contains(cell + Sides[i].Outside))
                {
                    var corner = cell + Sides[i].Corner;
                    if (!begins.TryGetValue(corner, out var sides))
                        begins.Add(corner, sides = []);
                    sides.Add(i);
                }
        var outlines = ImmutableArray.CreateBuilder<ImmutableArray<Point>>();
        foreach (var cell in cells)
            while (begins.TryGetValue(cell, out var open) && open.Count > 0)
                outlines.Add(Walk(cell, begins, side));
        return outlines.ToImmutable();
    }

    /// <summary>Round once, from a top left corner, where every outline has one.</summary>
    private static ImmutableArray<Point> Walk(Cell start, Dictionary<Cell, List<int>> begins, int length)
    {
        var outline = ImmutableArray.CreateBuilder<Point>();
        var (at, before) = (start, -1);
        do
        {
            var side = begins[at][0];
            begins[at].RemoveAt(0);
            if (side != before)
                outline.Add(new(at.Column * length, at.Row * length));
            (at, before) = (at + Sides[side].Along, side);
        } while (at != start);
        return outline.ToImmutable();
    }
}
