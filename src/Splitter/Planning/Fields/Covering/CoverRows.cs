using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// What each of a number of grounds covers: cells between all their edges, so that every ground holds a cell or has
/// nothing of it, islands as a whole or cell by cell, and boxes that must stay whole. Cells are left out that are covered wherever a neighbouring one is.
/// </summary>
internal static class CoverRows
{
    internal static CoverTable Table(CoverTask task, ImmutableArray<Box> grounds)
    {
        var box = task.Bounds;
        ImmutableArray<Box> inner = [.. grounds.Select(task.Inner)];
        var xs = Lines(inner.SelectMany(g => new[] { g.Left, g.Right }), box.Left, box.Right);
        var ys = Lines(inner.SelectMany(g => new[] { g.Top, g.Bottom }), box.Top, box.Bottom);
        var table = new CoverTable(grounds.Length);
        ImmutableArray<(int From, int To)> across = [.. inner.Select(g => (g.Left, g.Right)).Distinct().Order()];
        ImmutableArray<(int From, int To)> down = [.. inner.Select(g => (g.Top, g.Bottom)).Distinct().Order()];
        var at = inner
            .Select(
                (g, i) => (Place: (across.BinarySearch((g.Left, g.Right)), down.BinarySearch((g.Top, g.Bottom))), i)
            )
            .ToLookup(g => g.Place, g => g.i);
        foreach (var sets in Rows(task.Mainland, xs, ys))
            table.Add([.. sets.Order()]);
        foreach (var island in task.Islands)
        {
            var whole = Holding(island.Bounds);
            var rows = Rows(
                    [island],
                    Part(xs, island.Bounds.Left, island.Bounds.Right),
                    Part(ys, island.Bounds.Top, island.Bounds.Bottom)
                )
                .Select(sets => sets.Union(whole).Order().ToArray())
                .ToList();
            // A part that only those cover which hold the island as a whole asks for all of it.
            if (rows.Exists(r => r.Length == whole.Length))
                rows = [whole];
            foreach (var row in rows)
                table.Add(row);
        }
        foreach (var whole in task.Wholes)
            table.Add(Holding(whole));
        return table;

        int[] Holding(Box box) => [.. Enumerable.Range(0, grounds.Length).Where(i => grounds[i].Contains(box))];

        IEnumerable<List<int>> Rows(ImmutableArray<Region> drawn, int[] xs, int[] ys)
        {
            var cells = new DrawnCells(drawn, xs, ys);
            var (columns, rows) = (Stretches(xs, across), Stretches(ys, down));
            var (rightIn, leftIn) = Nested(columns);
            var (lowerIn, upperIn) = Nested(rows);
            for (var row = 0; row < cells.Rows; row++)
            for (var column = 0; column < cells.Columns; column++)
                if (
                    cells.Touched(column, row)
                    && !(rightIn[column] && cells.Touched(column + 1, row))
                    && !(leftIn[column] && cells.Touched(column - 1, row))
                    && !(lowerIn[row] && cells.Touched(column, row + 1))
                    && !(upperIn[row] && cells.Touched(column, row - 1))
                )
                    yield return [.. from x in columns[column] from y in rows[row] from set in at[(x, y)] select set];
        }
    }

    /// <summary>The lines around a stretch.</summary>
    private static int[] Part(int[] lines, int from, int to) =>
        lines[Math.Max(0, Array.FindLastIndex(lines, l => l <= from))..(Array.FindIndex(lines, l => l >= to) + 1)];

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
