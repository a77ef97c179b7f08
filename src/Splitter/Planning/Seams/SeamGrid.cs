using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// The ground of all fields in cells, so that the edges of fields lie on its lines: every cell lies in a field's ground or
/// beside it, whole. For each cell the fields that may sew it.
/// </summary>
internal sealed class SeamGrid
{
    /// <summary>
    /// The finest cell, µm. Finer brings seams no nearer to outlines, since they are drawn onto them afterwards; coarser
    /// loses gaps between shapes.
    /// </summary>
    private const int Finest = Units.Millimetre;

    /// <summary>Cells in common ground, and cells altogether: bounds of time (about a second) and of memory.</summary>
    private const double MostShared = 150_000;
    private const double MostCells = 1_500_000;

    internal SeamGrid(ImmutableArray<Box> grounds, int margin)
    {
        Grounds = grounds;
        var all = Box.Around(grounds);
        var shared = (
            from a in Enumerable.Range(0, grounds.Length)
            from b in Enumerable.Range(a + 1, grounds.Length - a - 1)
            let common = grounds[a].Common(grounds[b])
            select (double)common.Width * common.Height
        ).Sum();
        var area = Math.Max(shared / MostShared, (double)all.Width * all.Height / MostCells);
        Step = Math.Max(Finest, (int)Math.Ceiling(Math.Sqrt(area)));
        Xs = Lines(grounds.SelectMany(g => new[] { g.Left, g.Right }), Step);
        Ys = Lines(grounds.SelectMany(g => new[] { g.Top, g.Bottom }), Step);
        Allowed = Choices(margin);
    }

    internal ImmutableArray<Box> Grounds { get; }

    /// <summary>The longest side of a cell, µm.</summary>
    internal int Step { get; }

    /// <summary>Upright lines, from the left.</summary>
    internal ImmutableArray<int> Xs { get; }

    /// <summary>Level lines, from the top.</summary>
    internal ImmutableArray<int> Ys { get; }

    internal int Columns => Xs.Length - 1;

    internal int Rows => Ys.Length - 1;

    /// <summary>For each cell, row by row, the fields that may sew it; none outside all grounds.</summary>
    internal ImmutableArray<ImmutableArray<int>> Allowed { get; }

    internal int At(int column, int row) => (row * Columns) + column;

    /// <summary>The cell's width and height, µm.</summary>
    internal (int X, int Y) Size(int cell) =>
        (Xs[(cell % Columns) + 1] - Xs[cell % Columns], Ys[(cell / Columns) + 1] - Ys[cell / Columns]);

    internal Point Middle(int cell) =>
        new((Xs[cell % Columns] + Xs[(cell % Columns) + 1]) / 2, (Ys[cell / Columns] + Ys[(cell / Columns) + 1]) / 2);

    /// <summary>The column of a place, or of the nearest cell.</summary>
    internal int Column(int x) => Find(Xs, x);

    /// <summary>The row of a place, or of the nearest cell.</summary>
    internal int Row(int y) => Find(Ys, y);

    private static ImmutableArray<int> Lines(IEnumerable<int> edges, int step)
    {
        int[] fixedLines = [.. edges.Distinct().Order()];
        var lines = ImmutableArray.CreateBuilder<int>();
        lines.Add(fixedLines[0]);
        for (var i = 1; i < fixedLines.Length; i++)
        {
            var (from, length) = (fixedLines[i - 1], fixedLines[i] - fixedLines[i - 1]);
            var parts = (length + step - 1) / step;
            for (var k = 1; k <= parts; k++)
                lines.Add(from + (int)((long)length * k / parts));
        }
        return lines.ToImmutable();
    }

    private static int Find(ImmutableArray<int> lines, int value)
    {
        var index = lines.AsSpan().BinarySearch(value);
        return Math.Clamp(index < 0 ? ~index - 1 : index, 0, lines.Length - 2);
    }

    /// <summary>
    /// A field may sew what lies so far inside its ground that the overlap past a seam has room. Where common ground is too
    /// narrow for that, the field with the most room.
    /// </summary>
    private ImmutableArray<ImmutableArray<int>> Choices(int margin)
    {
        int[][] neighbours =
        [
            .. Enumerable
                .Range(0, Grounds.Length)
                .Select(a =>
                    Enumerable
                        .Range(0, Grounds.Length)
                        .Where(b => b != a && Grounds[a].Grown(1).Meets(Grounds[b]))
                        .ToArray()
                ),
        ];
        ImmutableArray<int>[] single = [.. Enumerable.Range(0, Grounds.Length).Select(i => ImmutableArray.Create(i))];
        int[][] inColumn =
        [
            .. Enumerable
                .Range(0, Columns)
                .Select(Middle)
                .Select(at =>
                    Enumerable
                        .Range(0, Grounds.Length)
                        .Where(i => at.X >= Grounds[i].Left && at.X <= Grounds[i].Right)
                        .ToArray()
                ),
        ];
        var choices = ImmutableArray.CreateBuilder<ImmutableArray<int>>(Columns * Rows);
        var holders = new List<int>();
        for (var cell = 0; cell < Columns * Rows; cell++)
        {
            var at = Middle(cell);
            holders.Clear();
            foreach (var i in inColumn[cell % Columns])
                if (Grounds[i].Contains(at))
                    holders.Add(i);
            if (holders.Count <= 1)
            {
                choices.Add(holders.Count == 0 ? [] : single[holders[0]]);
                continue;
            }
            var rooms = holders.ConvertAll(f => SeamRoom.Of(Grounds, f, neighbours[f], at));
            ImmutableArray<int> roomy = [.. holders.Where((_, i) => rooms[i] >= margin)];
            choices.Add(roomy.IsEmpty ? single[holders[rooms.IndexOf(rooms.Max())]] : roomy);
        }
        return choices.MoveToImmutable();
    }
}
