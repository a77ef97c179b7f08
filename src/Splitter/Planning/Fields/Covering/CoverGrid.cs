using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// The drawing in small cells, and how many fields of a cover hold each, so that it is quickly known where a field may be
/// moved and whether anything is left open. A cell counts as held only when it lies inside as a whole.
/// </summary>
internal sealed class CoverGrid
{
    /// <summary>Cells that the drawing is looked at in: about 1 mm on a drawing of 400 x 600 mm.</summary>
    private const int MostCells = 250_000;

    /// <summary>Smallest cell, µm.</summary>
    private const int Finest = Units.Millimetre / 2;

    /// <summary>No island.</summary>
    private const int None = -1;

    private readonly CoverTask task;
    private readonly int[] xs;
    private readonly int[] ys;
    private readonly DrawnCells cells;
    private readonly int[] before;

    /// <summary>For each island the cells that only it touches.</summary>
    private readonly int[][] islands;

    /// <summary>For each cell the island that alone touches it, or <see cref="None"/>.</summary>
    private readonly int[] islandOf;
    private readonly short[] held;
    private readonly short[] wholes;

    /// <param name="known">Fields of covers: their edges are lines between cells, so that what they cover is known exactly.</param>
    internal CoverGrid(CoverTask task, IEnumerable<Field> known)
    {
        this.task = task;
        var box = task.Bounds;
        var cell = Math.Max(Finest, (int)Math.Sqrt((double)box.Width * box.Height / MostCells));
        ImmutableArray<Box> inner = [.. known.Select(f => task.Inner(task.Template.Ground(f)))];
        xs = Lines(box.Left, box.Right, cell, inner.SelectMany(b => new[] { b.Left, b.Right }));
        ys = Lines(box.Top, box.Bottom, cell, inner.SelectMany(b => new[] { b.Top, b.Bottom }));
        cells = new(task.Drawn, xs, ys);
        before = new int[(Columns + 1) * (Rows + 1)];
        for (var row = 0; row < Rows; row++)
        for (var column = 0; column < Columns; column++)
            before[At(column + 1, row + 1)] =
                before[At(column, row + 1)]
                + before[At(column + 1, row)]
                - before[At(column, row)]
                + (cells.Touched(column, row) ? 1 : 0);
        islandOf = IslandOf();
        islands = [.. task.Islands.Select(_ => Array.Empty<int>())];
        foreach (var island in Enumerable.Range(0, islandOf.Length).GroupBy(cell => islandOf[cell]))
            if (island.Key != None)
                islands[island.Key] = [.. island];
        held = new short[Columns * Rows];
        wholes = new short[task.Wholes.Length];
    }

    private int Columns => xs.Length - 1;

    private int Rows => ys.Length - 1;

    /// <summary>Drawn cells and boxes that no field holds as a whole.</summary>
    internal int Open { get; private set; }

    /// <summary>Something is drawn there, give or take a cell.</summary>
    internal bool Drawn(Box box)
    {
        var (left, right) = (IndexAtOrBefore(xs, box.Left), IndexAtOrAfter(xs, box.Right));
        var (top, bottom) = (IndexAtOrBefore(ys, box.Top), IndexAtOrAfter(ys, box.Bottom));
        return before[At(right, bottom)] - before[At(left, bottom)] - before[At(right, top)] + before[At(left, top)]
            > 0;
    }

    /// <summary>Begins anew with these fields.</summary>
    internal void Reset(ImmutableArray<Field> fields)
    {
        Array.Clear(held);
        Array.Clear(wholes);
        Open = before[^1] + wholes.Length;
        foreach (var field in fields)
            Add(field, 1);
    }

    /// <summary>Takes a field in (1) or out (-1).</summary>
    internal void Add(Field field, short by)
    {
        var ground = task.Template.Ground(field);
        var box = task.Inner(ground);
        var (left, right) = (IndexAtOrAfter(xs, box.Left), IndexAtOrBefore(xs, box.Right));
        var (top, bottom) = (IndexAtOrAfter(ys, box.Top), IndexAtOrBefore(ys, box.Bottom));
        for (var row = top; row < bottom; row++)
        for (var column = left; column < right; column++)
            if (cells.Touched(column, row))
                Count(ref held[(row * Columns) + column], by);
        for (var i = 0; i < islands.Length; i++)
            if (ground.Contains(task.Islands[i].Bounds))
                foreach (var cell in islands[i])
                    if (
                        !(
                            cell % Columns >= left
                            && cell % Columns < right
                            && cell / Columns >= top
                            && cell / Columns < bottom
                        )
                    )
                        Count(ref held[cell], by);
        for (var i = 0; i < wholes.Length; i++)
            if (ground.Contains(task.Wholes[i]))
                Count(ref wholes[i], by);
    }

    /// <summary>The ground that a field of the cover has to have because no other one holds what is there; empty for none.</summary>
    internal Box Needed(Field field)
    {
        var ground = task.Template.Ground(field);
        var box = task.Inner(ground);
        var need = Box.Empty;
        var (left, right) = (IndexAtOrAfter(xs, box.Left), IndexAtOrBefore(xs, box.Right));
        var (top, bottom) = (IndexAtOrAfter(ys, box.Top), IndexAtOrBefore(ys, box.Bottom));
        var whole = islands.Select((_, i) => ground.Contains(task.Islands[i].Bounds)).ToArray();
        for (var row = top; row < bottom; row++)
        {
            int first = -1,
                last = -1;
            for (var column = left; column < right; column++)
                if (held[(row * Columns) + column] == 1 && !Held(islandOf[(row * Columns) + column]))
                    (first, last) = (first < 0 ? column : first, column);
            if (first >= 0)
                need = need.Joined(new(xs[first], ys[row], xs[last + 1], ys[row + 1]));
        }
        if (!need.IsEmpty)
            need = task.Around(need);
        for (var i = 0; i < islands.Length; i++)
            if (whole[i] && Array.Exists(islands[i], cell => held[cell] == 1))
                need = need.Joined(task.Islands[i].Bounds);
        for (var i = 0; i < wholes.Length; i++)
            if (wholes[i] == 1 && ground.Contains(task.Wholes[i]))
                need = need.Joined(task.Wholes[i]);
        return need;

        bool Held(int island) => island != None && whole[island];
    }

    private int[] IslandOf()
    {
        var found = new int[Columns * Rows];
        Array.Fill(found, None);
        if (task.Islands.IsEmpty)
            return found;
        var mainland = new DrawnCells(task.Mainland, xs, ys);
        var shared = new bool[found.Length];
        for (var i = 0; i < task.Islands.Length; i++)
        {
            var box = task.Islands[i].Bounds;
            var (left, right) = (IndexAtOrBefore(xs, box.Left), IndexAtOrAfter(xs, box.Right));
            var (top, bottom) = (IndexAtOrBefore(ys, box.Top), IndexAtOrAfter(ys, box.Bottom));
            var own = new DrawnCells([task.Islands[i]], xs[left..(right + 1)], ys[top..(bottom + 1)]);
            for (var row = top; row < bottom; row++)
            for (var column = left; column < right; column++)
            {
                var cell = (row * Columns) + column;
                if (!own.Touched(column - left, row - top))
                    continue;
                shared[cell] |= found[cell] != None || mainland.Touched(column, row);
                found[cell] = shared[cell] ? None : i;
            }
        }
        return found;
    }

    private void Count(ref short count, short by)
    {
        if (count == 0)
            Open--;
        count += by;
        if (count == 0)
            Open++;
    }

    private int At(int column, int row) => (row * (Columns + 1)) + column;

    private static int IndexAtOrBefore(int[] lines, int value)
    {
        var found = Array.BinarySearch(lines, value);
        return Math.Max(0, found >= 0 ? found : ~found - 1);
    }

    private static int IndexAtOrAfter(int[] lines, int value)
    {
        var found = Array.BinarySearch(lines, value);
        return Math.Min(lines.Length - 1, found >= 0 ? found : ~found);
    }

    private static int[] Lines(int from, int to, int step, IEnumerable<int> more)
    {
        var count = Math.Max(1, (to - from) / step);
        var even = Enumerable.Range(0, count + 1).Select(i => from + (int)((long)(to - from) * i / count));
        return [.. even.Concat(more.Where(v => v > from && v < to)).Distinct().Order()];
    }
}
