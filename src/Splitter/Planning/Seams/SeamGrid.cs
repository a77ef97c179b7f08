using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// The ground cut into cells, so that each lies in a field's ground as a whole or not at all: every edge of a ground is
/// a line of the grid, and between them lines are spread evenly. Seams run along its lines until they are smoothed.
/// </summary>
internal sealed class SeamGrid
{
    /// <summary>
    /// Longest side of a cell, µm: about two rows of a fill, so that a seam finds its way between small shapes.
    /// </summary>
    private const int Cell = 1500;

    /// <summary>Most cells; larger work gets larger cells, so that time and memory have a bound.</summary>
    private const int MostCells = 400_000;

    private readonly Dictionary<int, (int Left, int Top, int Right, int Bottom)> ranges = [];

    internal SeamGrid(ImmutableArray<Box> grounds, int cell = Cell)
    {
        var bounds = Box.Around(grounds);
        var step = Math.Max(cell, (int)Math.Ceiling(Math.Sqrt((double)bounds.Width * bounds.Height / MostCells)));
        X = Lines(grounds.SelectMany(g => new[] { g.Left, g.Right }), step);
        Y = Lines(grounds.SelectMany(g => new[] { g.Top, g.Bottom }), step);
        (MiddleX, MiddleY) = (Middles(X), Middles(Y));
        Fields = new int[Columns * Rows][];
        for (var field = 0; field < grounds.Length; field++)
        {
            var ground = grounds[field];
            ranges[field] = (
                Array.BinarySearch(X, ground.Left),
                Array.BinarySearch(Y, ground.Top),
                Array.BinarySearch(X, ground.Right),
                Array.BinarySearch(Y, ground.Bottom)
            );
        }
        FindFields(grounds.Length);
    }

    /// <summary>Upright lines, rising, µm.</summary>
    internal int[] X { get; }

    /// <summary>Level lines, rising, µm.</summary>
    internal int[] Y { get; }

    /// <summary>The middles of columns, µm.</summary>
    internal double[] MiddleX { get; }

    /// <summary>The middles of rows, µm.</summary>
    internal double[] MiddleY { get; }

    internal int Columns => X.Length - 1;

    internal int Rows => Y.Length - 1;

    internal int CellCount => Fields.Length;

    /// <summary>For each cell, row by row, the fields whose ground holds it.</summary>
    internal int[][] Fields { get; }

    internal double Width(int cell) => X[(cell % Columns) + 1] - X[cell % Columns];

    internal double Height(int cell) => Y[(cell / Columns) + 1] - Y[cell / Columns];

    /// <summary>Visits the pairs of neighbouring cells that a line passes through, in its direction.</summary>
    internal void Walk(Polyline line, Action<int, int> step)
    {
        var passes = new List<(double Share, bool Across, int Move)>();
        for (var k = 1; k < line.Points.Length; k++)
        {
            var (from, to) = (line.Points[k - 1], line.Points[k]);
            passes.Clear();
            Passes(X, from.X, to.X, across: true, passes);
            Passes(Y, from.Y, to.Y, across: false, passes);
            passes.Sort();
            var (column, row) = (Interval(X, from.X), Interval(Y, from.Y));
            foreach (var (_, across, move) in passes)
            {
                var before = CellAt(column, row);
                (column, row) = across ? (column + move, row) : (column, row + move);
                var after = CellAt(column, row);
                if (before >= 0 && after >= 0)
                    step(before, after);
            }
        }
    }

    /// <summary>The column that holds a value, or the outermost on its side.</summary>
    internal int ColumnOf(int x) => Math.Clamp(Interval(X, x), 0, Columns - 1);

    /// <summary>The row that holds a value, or the outermost on its side.</summary>
    internal int RowOf(int y) => Math.Clamp(Interval(Y, y), 0, Rows - 1);

    /// <summary>Number of a cell, or -1 for none.</summary>
    internal int CellAt(int column, int row) =>
        column < 0 || row < 0 || column >= Columns || row >= Rows ? -1 : (row * Columns) + column;

    /// <summary>The interval that holds a value; a line belongs to the interval after it.</summary>
    private static int Interval(int[] lines, int value)
    {
        var found = Array.BinarySearch(lines, value);
        return found >= 0 ? found : ~found - 1;
    }

    private static void Passes(int[] lines, int from, int to, bool across, List<(double, bool, int)> passes)
    {
        // From the interval of one end to that of the other: a line counts when its two sides do.
        var (first, last) = (Interval(lines, from), Interval(lines, to));
        for (var i = Math.Min(first, last) + 1; i <= Math.Max(first, last); i++)
            passes.Add(((lines[i] - (double)from) / (to - (double)from), across, to > from ? 1 : -1));
    }

    private static int[] Lines(IEnumerable<int> edges, int step)
    {
        var fixedLines = edges.Distinct().Order().ToList();
        var lines = new List<int> { fixedLines[0] };
        for (var k = 1; k < fixedLines.Count; k++)
        {
            var (from, length) = (fixedLines[k - 1], (long)fixedLines[k] - fixedLines[k - 1]);
            var parts = (length + step - 1) / step;
            for (var i = 1; i <= parts; i++)
                lines.Add(from + (int)(length * i / parts));
        }
        return [.. lines];
    }

    private static double[] Middles(int[] lines)
    {
        var middles = new double[lines.Length - 1];
        for (var i = 0; i < middles.Length; i++)
            middles[i] = (lines[i] + (double)lines[i + 1]) / 2;
        return middles;
    }

    /// <summary>Cells between the same edges of grounds share one list.</summary>
    private void FindFields(int count)
    {
        var columnBlocks = Blocks(Columns, r => (r.Left, r.Right));
        var rowBlocks = Blocks(Rows, r => (r.Top, r.Bottom));
        var byBlock = new Dictionary<(int, int), int[]>();
        for (var row = 0; row < Rows; row++)
        for (var column = 0; column < Columns; column++)
        {
            var block = (columnBlocks[column], rowBlocks[row]);
            if (!byBlock.TryGetValue(block, out var fields))
            {
                fields =
                [
                    .. Enumerable
                        .Range(0, count)
                        .Where(f =>
                            column >= ranges[f].Left
                            && column < ranges[f].Right
                            && row >= ranges[f].Top
                            && row < ranges[f].Bottom
                        ),
                ];
                byBlock[block] = fields;
            }
            Fields[(row * Columns) + column] = fields;
        }
    }

    private int[] Blocks(int length, Func<(int Left, int Top, int Right, int Bottom), (int From, int To)> side)
    {
        var starts = ranges.Values.SelectMany(r => new[] { side(r).From, side(r).To }).ToHashSet();
        var blocks = new int[length];
        for (var i = 1; i < length; i++)
            blocks[i] = blocks[i - 1] + (starts.Contains(i) ? 1 : 0);
        return blocks;
    }
}
