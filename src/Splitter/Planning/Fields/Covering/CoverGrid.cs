using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// The drawing in small cells, and how many fields of a cover hold each, so that it is quickly known where a field may
/// be moved and whether anything is left open. A cell counts as held only when it lies inside as a whole.
/// </summary>
internal sealed class CoverGrid
{
    /// <summary>Cells that the drawing is looked at in: about 1 mm on a drawing of 400 x 600 mm.</summary>
    private const int MostCells = 250_000;

    /// <summary>Smallest cell, µm.</summary>
    private const int Finest = Units.Millimetre / 2;

    private readonly CoverTask task;
    private readonly int[] xs;
    private readonly int[] ys;
    private readonly DrawnCells cells;
    private readonly int[] before;
    private readonly short[] held;
    private readonly short[] wholes;

    /// <param name="known">
    /// Fields of covers: their edges are lines between cells, so that what they cover is known exactly.
    /// </param>
    internal CoverGrid(CoverTask task, IEnumerable<Field> known)
    {
        this.task = task;
        var box = task.Bounds;
        var cell = Math.Max(Finest, (int)Math.Sqrt((double)box.Width * box.Height / MostCells));
        ImmutableArray<Box> inner = [.. known.Select(f => task.Inner(task.Template.Ground(f)))];
        xs = GridLines.Even(box.Left, box.Right, cell, inner.SelectMany(b => new[] { b.Left, b.Right }));
        ys = GridLines.Even(box.Top, box.Bottom, cell, inner.SelectMany(b => new[] { b.Top, b.Bottom }));
        cells = new(task.Drawn, xs, ys);
        before = new int[(Columns + 1) * (Rows + 1)];
        for (var row = 0; row < Rows; row++)
        for (var column = 0; column < Columns; column++)
            before[At(column + 1, row + 1)] =
                before[At(column, row + 1)]
                + before[At(column + 1, row)]
                - before[At(column, row)]
                + (cells.Touched(column, row) ? 1 : 0);
        held = new short[Columns * Rows];
        wholes = new short[task.Wholes.Length];
    }

    /// <summary>A grid of the same cells for other fields, which it holds none of.</summary>
    internal CoverGrid(CoverGrid other)
    {
        (task, xs, ys, cells, before) = (other.task, other.xs, other.ys, other.cells, other.before);
        held = new short[other.held.Length];
        wholes = new short[other.wholes.Length];
    }

    private int Columns => xs.Length - 1;

    private int Rows => ys.Length - 1;

    /// <summary>Drawn cells and boxes that no field holds as a whole.</summary>
    internal int Open { get; private set; }

    /// <summary>Something is drawn there, give or take a cell.</summary>
    internal bool Drawn(Box box)
    {
        var (left, right) = (GridLines.AtOrBefore(xs, box.Left), GridLines.AtOrAfter(xs, box.Right));
        var (top, bottom) = (GridLines.AtOrBefore(ys, box.Top), GridLines.AtOrAfter(ys, box.Bottom));
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

    /// <summary>Takes one field out and another one in: what both hold stays as it is.</summary>
    internal void Exchange(Field from, Field to)
    {
        Add(from, -1, to);
        Add(to, 1, from);
    }

    /// <summary>Takes a field in (1) or out (-1).</summary>
    /// <param name="but">What this one holds is left alone.</param>
    private void Add(Field field, short by, Field? but = null)
    {
        var own = Cells(field);
        var other = but is null ? Box.Empty : Cells(but);
        for (var row = own.Top; row <= own.Bottom; row++)
            if (row < other.Top || row > other.Bottom)
                Add(row, own.Left, own.Right, by);
            else
            {
                Add(row, own.Left, Math.Min(own.Right, other.Left - 1), by);
                Add(row, Math.Max(own.Left, other.Right + 1), own.Right, by);
            }
        for (var i = 0; i < wholes.Length; i++)
            if (Holds(field, i) && !(but is not null && Holds(but, i)))
                Count(ref wholes[i], by);
    }

    /// <summary>Columns and rows of the cells that a field holds.</summary>
    private Box Cells(Field field)
    {
        var box = task.Inner(task.Template.Ground(field));
        var within = new Box(
            GridLines.AtOrAfter(xs, box.Left),
            GridLines.AtOrAfter(ys, box.Top),
            GridLines.AtOrBefore(xs, box.Right) - 1,
            GridLines.AtOrBefore(ys, box.Bottom) - 1
        );
        return within.IsEmpty ? Box.Empty : within;
    }

    private void Add(int row, int left, int right, short by)
    {
        for (var column = left; column <= right; column++)
            if (cells.Touched(column, row))
                Count(ref held[(row * Columns) + column], by);
    }

    private bool Holds(Field field, int whole) => task.Template.Ground(field).Contains(task.Wholes[whole]);

    /// <summary>
    /// The ground that a field of the cover has to have because no other one holds what is there; empty for none.
    /// </summary>
    internal Box Needed(Field field)
    {
        var ground = task.Template.Ground(field);
        var box = task.Inner(ground);
        var need = Box.Empty;
        var (left, right) = (GridLines.AtOrAfter(xs, box.Left), GridLines.AtOrBefore(xs, box.Right));
        var (top, bottom) = (GridLines.AtOrAfter(ys, box.Top), GridLines.AtOrBefore(ys, box.Bottom));
        for (var row = top; row < bottom; row++)
        {
            var (from, to) = ((row * Columns) + left, (row * Columns) + right - 1);
            while (from <= to && held[from] != 1)
                from++;
            while (from < to && held[to] != 1)
                to--;
            if (from <= to)
                need = need.Joined(new(xs[from - (row * Columns)], ys[row], xs[to - (row * Columns) + 1], ys[row + 1]));
        }
        if (!need.IsEmpty)
            need = task.Around(need);
        for (var i = 0; i < wholes.Length; i++)
            if (wholes[i] == 1 && ground.Contains(task.Wholes[i]))
                need = need.Joined(task.Wholes[i]);
        return need;
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
}
