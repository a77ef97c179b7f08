using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>Gives small pieces of a territory to the neighbour that has most of the boundary round them.</summary>
internal static class Islands
{
    /// <summary>
    /// A piece smaller than this is not worth a stretch of stitching of its own, µm²: 25 mm², about what a tie-in, a
    /// tie-off and the trims between would take. Common practice, no source.
    /// </summary>
    private const double Smallest = 25.0 * Units.Millimetre * Units.Millimetre;

    /// <param name="labels">Changed in place.</param>
    internal static void Remove(SeamGrid grid, int[] labels)
    {
        var seen = new bool[grid.CellCount];
        for (var start = 0; start < grid.CellCount; start++)
        {
            if (seen[start] || grid.Fields[start].Length == 0)
                continue;
            var (cells, border) = Piece(grid, labels, start, seen);
            if (cells.Sum(c => grid.Width(c) * grid.Height(c)) >= Smallest)
                continue;
            var better = border
                .Where(b => cells.TrueForAll(c => grid.Fields[c].Contains(b.Key)))
                .OrderByDescending(b => b.Value)
                .ThenBy(b => b.Key)
                .Select(b => (int?)b.Key)
                .FirstOrDefault();
            if (better is { } field)
                foreach (var cell in cells)
                    labels[cell] = field;
        }
    }

    /// <summary>The cells that hang together with one, and how much boundary each other field has with them.</summary>
    private static (List<int> Cells, Dictionary<int, double> Border) Piece(
        SeamGrid grid,
        int[] labels,
        int start,
        bool[] seen
    )
    {
        var cells = new List<int> { start };
        var border = new Dictionary<int, double>();
        seen[start] = true;
        for (var i = 0; i < cells.Count; i++)
        {
            var (column, row) = (cells[i] % grid.Columns, cells[i] / grid.Columns);
            Visit(grid.CellAt(column + 1, row), grid.Height(cells[i]));
            Visit(grid.CellAt(column - 1, row), grid.Height(cells[i]));
            Visit(grid.CellAt(column, row + 1), grid.Width(cells[i]));
            Visit(grid.CellAt(column, row - 1), grid.Width(cells[i]));
        }
        return (cells, border);

        void Visit(int cell, double side)
        {
            if (cell < 0 || grid.Fields[cell].Length == 0)
                return;
            if (labels[cell] != labels[start])
                border[labels[cell]] = border.GetValueOrDefault(labels[cell]) + side;
            else if (!seen[cell])
            {
                seen[cell] = true;
                cells.Add(cell);
            }
        }
    }
}
