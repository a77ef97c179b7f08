using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// Plain covers, where the search for the fewest fields starts: fields in rows, in each row side by side, each flush
/// with the first thing that none before it sews. Which way the fields of a row lie and how deep it goes is chosen so
/// that all rows together have the fewest fields (dynamic programming over the places where a row may begin).
/// </summary>
internal sealed class Shelves
{
    /// <summary>Cells that the drawing is looked at in: 1 mm on a drawing of 700 x 700 mm.</summary>
    private const int MostCells = 500_000;

    /// <summary>More boxes that must stay whole than these get no lines of their own.</summary>
    private const int MostLines = 400;

    /// <summary>How many depths of a row are tried, from as deep as it goes to half of that.</summary>
    private const int Depths = 16;

    private readonly CoverTask task;
    private readonly bool upright;
    private readonly Box bounds;
    private readonly ImmutableArray<Box> wholes;
    private readonly ImmutableArray<(Turn Turn, int Across, int Down)> sizes;
    private readonly int[] xs;
    private readonly int[] ys;
    private readonly int[,] above;

    /// <param name="upright">Columns instead of rows: all is looked at with x and y exchanged.</param>
    private Shelves(CoverTask task, bool upright)
    {
        (this.task, this.upright) = (task, upright);
        bounds = Exchanged(task.Bounds);
        wholes = [.. task.Wholes.Select(Exchanged)];
        // Half a step of the tape to spare on both sides: centres move to its grid.
        sizes =
        [
            .. task
                .Turns.Select(t => (t, Exchanged(task.GroundOf(t))))
                .Select(s => (s.t, s.Item2.Width - Units.TapeStep, s.Item2.Height - Units.TapeStep)),
        ];
        var cell = Math.Max(Units.Millimetre, (int)Math.Sqrt((double)bounds.Width * bounds.Height / MostCells));
        var few = wholes.Length <= MostLines ? wholes : [];
        xs = GridLines.Even(bounds.Left, bounds.Right, cell, few.Select(w => w.Left + task.SeamRoom));
        ys = GridLines.Even(bounds.Top, bounds.Bottom, cell, few.Select(w => w.Top + task.SeamRoom));
        var cells = upright ? new DrawnCells(task.Drawn, ys, xs) : new DrawnCells(task.Drawn, xs, ys);
        above = new int[xs.Length - 1, ys.Length];
        for (var column = 0; column < xs.Length - 1; column++)
        for (var row = 0; row < ys.Length - 1; row++)
            above[column, row + 1] =
                above[column, row] + ((upright ? cells.Touched(row, column) : cells.Touched(column, row)) ? 1 : 0);
    }

    /// <summary>
    /// A cover in rows and one in columns, as far as there are such covers; nothing is asked of their links.
    /// </summary>
    /// <param name="jobs">How many threads may work.</param>
    internal static IEnumerable<ImmutableArray<Field>> Covers(CoverTask task, int jobs = 1) =>
        task.Bounds.IsEmpty
            ? []
            : InOrder
                .Select([false, true], jobs, columns => new Shelves(task, columns).Cover())
                .OfType<ImmutableArray<Field>>();

    private ImmutableArray<Field>? Cover()
    {
        var rows = ys.Length - 1;
        var fewest = new int?[rows + 1];
        var next = new (int Row, int Size)[rows + 1];
        fewest[rows] = 0;
        for (var row = rows - 1; row >= 0; row--)
        {
            for (var size = 0; size < sizes.Length; size++)
                foreach (var end in Ends(row, sizes[size].Down))
                    if (
                        fewest[end] is { } rest
                        && Row(row, end, size)?.Count + rest is { } all
                        && !(all >= fewest[row])
                    )
                        (fewest[row], next[row]) = (all, (end, size));
        }
        if (fewest[0] is null)
            return null;
        var fields = ImmutableArray.CreateBuilder<Field>();
        for (var row = 0; row < rows; row = next[row].Row)
            foreach (var left in Row(row, next[row].Row, next[row].Size) ?? [])
            {
                var (turn, across, down) = sizes[next[row].Size];
                var (x, y) = (left + (across / 2), Top(row) + (down / 2));
                fields.Add(task.Template.At(upright ? new(y, x) : new(x, y), turn));
            }
        return fields.ToImmutable();
    }

    /// <summary>Where the ground of a row begins that has to cover from this line on.</summary>
    private int Top(int row) => row == 0 ? bounds.Top : ys[row] - task.SeamRoom;

    /// <summary>The lines up to which a row may be asked to cover, the deepest first.</summary>
    private IEnumerable<int> Ends(int row, int down)
    {
        var (top, last) = (Top(row), ys.Length - 1);
        var bottom = top + down;
        var end =
            bottom >= bounds.Bottom
                ? last
                : GridLines.AtOrBefore(ys, Math.Min(bottom - task.SeamRoom, bottom - task.Common + task.SeamRoom));
        // What begins in this row and does not end in it has to begin in the next one.
        foreach (var whole in wholes)
            if (whole.Top >= top && whole.Bottom > bottom && whole.Top < bottom)
                end = Math.Min(end, GridLines.AtOrBefore(ys, whole.Top + task.SeamRoom));
        var step = Math.Max(1, (end - row) / 2 / Depths);
        for (var at = end; at > row && at >= end - (step * Depths); at -= step)
            yield return at;
    }

    /// <summary>Where the grounds of a row begin; null when it cannot hold what must stay whole.</summary>
    private List<int>? Row(int row, int end, int size)
    {
        var (top, bottom, across) = (Top(row), Top(row) + sizes[size].Down, sizes[size].Across);
        var until = end == ys.Length - 1 ? int.MaxValue : Top(end);
        var open = new List<Box>();
        foreach (var whole in wholes)
        {
            if (whole.Top < top || whole.Top >= until)
                continue;
            if (whole.Bottom > bottom || whole.Width > across)
                return null;
            open.Add(whole);
        }
        var lefts = new List<int>();
        for (var column = 0; ; )
        {
            while (column < xs.Length - 1 && above[column, end] == above[column, row])
                column++;
            var left = column == xs.Length - 1 ? int.MaxValue : Start(column);
            foreach (var whole in open)
                left = Math.Min(left, whole.Left);
            if (left == int.MaxValue)
                return lefts;
            if (lefts.Count > 0)
                left = Math.Min(left, lefts[^1] + across - task.Common);
            // A field that is hardly wider than what it shares with the next one covers nothing more.
            if (lefts.Count > 0 && left <= lefts[^1])
                return null;
            lefts.Add(left);
            var right = left + across;
            column =
                right >= bounds.Right
                    ? xs.Length - 1
                    : Math.Max(column, GridLines.AtOrBefore(xs, right - task.SeamRoom));
            open.RemoveAll(w => w.Left >= left && w.Right <= right);
        }
    }

    private int Start(int column) => column == 0 ? bounds.Left : xs[column] - task.SeamRoom;

    private Box Exchanged(Box box) => upright ? new(box.Top, box.Left, box.Bottom, box.Right) : box;
}
