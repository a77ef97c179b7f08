namespace Splitter.Geometry;

/// <summary>Which cells hang together by their sides, from rows of them side by side.</summary>
internal sealed class CellIslands
{
    private readonly Dictionary<int, List<int>> rows = [];
    private readonly List<(int From, int To)> spans = [];

    /// <summary>For each span another one that it hangs together with, or itself.</summary>
    private readonly List<int> parents = [];

    /// <param name="cells">Row by row, and each from the left.</param>
    internal CellIslands(IEnumerable<Cell> cells)
    {
        Cell? last = null;
        foreach (var cell in cells)
        {
            if (last is { } before && before + new Cell(1, 0) == cell)
                spans[^1] = (spans[^1].From, cell.Column);
            else
                Begin(cell);
            last = cell;
        }
        foreach (var (row, below) in rows)
            if (rows.TryGetValue(row - 1, out var above))
                Join(above, below);
    }

    /// <summary>The number of the island that a cell lies on.</summary>
    internal int Of(Cell cell)
    {
        var row = rows[cell.Row];
        var (low, high) = (0, row.Count - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = spans[row[middle]].To < cell.Column ? (middle + 1, high) : (low, middle);
        }
        return Root(row[low]);
    }

    private void Begin(Cell cell)
    {
        if (!rows.TryGetValue(cell.Row, out var row))
            rows.Add(cell.Row, row = []);
        row.Add(spans.Count);
        parents.Add(spans.Count);
        spans.Add((cell.Column, cell.Column));
    }

    /// <summary>Two neighbouring rows, walked together.</summary>
    private void Join(List<int> above, List<int> below)
    {
        for (int a = 0, b = 0; a < above.Count && b < below.Count; )
        {
            var (one, other) = (spans[above[a]], spans[below[b]]);
            if (one.From <= other.To && other.From <= one.To)
                parents[Root(below[b])] = Root(above[a]);
            (a, b) = one.To < other.To ? (a + 1, b) : (a, b + 1);
        }
    }

    private int Root(int span)
    {
        while (parents[span] != span)
            span = parents[span] = parents[parents[span]];
        return span;
    }
}
