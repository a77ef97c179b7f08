using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// What each of a number of grounds covers: cells between all their edges, so that every ground holds a cell or has
/// nothing of it, and boxes that must stay whole. Cells are left out that are covered wherever a neighbouring one is.
/// </summary>
internal static class CoverRows
{
    /// <param name="jobs">How many threads may work.</param>
    internal static CoverTable Table(CoverTask task, ImmutableArray<Box> grounds, int jobs = 1)
    {
        var box = task.Bounds;
        ImmutableArray<Box> inner = [.. grounds.Select(task.Inner)];
        var xs = Lines(inner.SelectMany(g => new[] { g.Left, g.Right }), box.Left, box.Right);
        var ys = Lines(inner.SelectMany(g => new[] { g.Top, g.Bottom }), box.Top, box.Bottom);
        var cells = new DrawnCells(task.Drawn, xs, ys);
        ImmutableArray<(int From, int To)> across = [.. inner.Select(g => (g.Left, g.Right)).Distinct().Order()];
        ImmutableArray<(int From, int To)> down = [.. inner.Select(g => (g.Top, g.Bottom)).Distinct().Order()];
        var (rightIn, leftIn) = Nested(Stretches(xs, across));
        var (lowerIn, upperIn) = Nested(Stretches(ys, down));
        // Cells that count are rows of the table, row by row: how many lie before each cell.
        var before = new int[cells.Rows, cells.Columns + 1];
        var count = 0;
        for (var row = 0; row < cells.Rows; row++)
        {
            before[row, 0] = count;
            for (var column = 0; column < cells.Columns; column++)
                before[row, column + 1] = Counts(column, row) ? ++count : count;
        }
        var table = new CoverTable(count, [.. InOrder.Select(inner, jobs, Held)]);
        foreach (var whole in task.Wholes)
            table.Add([.. Enumerable.Range(0, grounds.Length).Where(i => grounds[i].Contains(whole))]);
        return table;

        bool Counts(int column, int row) =>
            cells.Touched(column, row)
            && !(rightIn[column] && cells.Touched(column + 1, row))
            && !(leftIn[column] && cells.Touched(column - 1, row))
            && !(lowerIn[row] && cells.Touched(column, row + 1))
            && !(upperIn[row] && cells.Touched(column, row - 1));

        List<int> Held(Box ground)
        {
            var held = new List<int>();
            var (left, right) = (GridLines.AtOrAfter(xs, ground.Left), GridLines.AtOrBefore(xs, ground.Right));
            var (top, bottom) = (GridLines.AtOrAfter(ys, ground.Top), GridLines.AtOrBefore(ys, ground.Bottom));
            for (var row = top; row < bottom && left < right; row++)
            for (var cell = before[row, left]; cell < before[row, right]; cell++)
                held.Add(cell);
            return held;
        }
    }

    private static int[] Lines(IEnumerable<int> edges, int from, int to) =>
        [.. edges.Where(e => e > from && e < to).Append(from).Append(to).Distinct().Order()];

    /// <summary>For each stretch between two lines the spans that hold it.</summary>
    private static int[][] Stretches(int[] lines, ImmutableArray<(int From, int To)> spans) =>
        [
            .. Enumerable
                .Range(0, Math.Max(0, lines.Length - 1))
                .Select(i =>
                    Enumerable
                        .Range(0, spans.Length)
                        .Where(s => spans[s].From <= lines[i] && spans[s].To >= lines[i + 1])
                        .ToArray()
                ),
        ];

    /// <summary>
    /// For each stretch whether whatever holds the next one (the one before) holds it as well; of equal ones the first
    /// stays.
    /// </summary>
    private static (bool[] Next, bool[] Before) Nested(int[][] stretches)
    {
        var (next, before) = (new bool[stretches.Length], new bool[stretches.Length]);
        for (var i = 0; i + 1 < stretches.Length; i++)
        {
            var (a, b) = (stretches[i], stretches[i + 1]);
            next[i] = b.Length < a.Length && b.All(s => Array.BinarySearch(a, s) >= 0);
            before[i + 1] = a.All(s => Array.BinarySearch(b, s) >= 0);
        }
        return (next, before);
    }
}
