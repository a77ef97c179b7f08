using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Order;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// Moves the fields of a cover within the room that they have, so that neighbours share more ground: corners then lie
/// further apart, and errors along the chain of hoopings grow less. What only one field covers, it goes on covering.
/// </summary>
internal sealed class Settling
{
    /// <summary>Cells that the drawing is looked at in: about 1 mm on a drawing of 400 x 600 mm.</summary>
    private const int MostCells = 250_000;

    /// <summary>Smallest cell, µm.</summary>
    private const int Finest = Units.Millimetre / 2;

    /// <summary>Rounds of moving every field; what moves later moves little.</summary>
    private const int Rounds = 6;

    /// <summary>Larger plans are evened out, but not tried place by place: time grows with the fourth power.</summary>
    private const int MostTried = 40;

    private readonly CoverTask task;
    private readonly Box? held;
    private readonly int[] xs;
    private readonly int[] ys;
    private readonly DrawnCells cells;

    /// <param name="held">What the first field has to hold of the folds.</param>
    internal Settling(CoverTask task, Box? held)
    {
        (this.task, this.held) = (task, held);
        var box = task.Bounds;
        var cell = Math.Max(Finest, (int)Math.Sqrt((double)box.Width * box.Height / MostCells));
        xs = Lines(box.Left, box.Right, cell);
        ys = Lines(box.Top, box.Bottom, cell);
        cells = new(task.Drawn, xs, ys);
    }

    /// <summary>The cover as it is, or settled, whichever is predicted to fit better.</summary>
    internal ImmutableArray<Field> Settled(ImmutableArray<Field> fields)
    {
        var even = fields;
        for (var round = 0; round < Rounds; round++)
        {
            var before = even;
            for (var i = 0; i < even.Length; i++)
                if (Room(even, i) is { } room)
                    even = Moved(even, i, room.Centre);
            if (even.SequenceEqual(before))
                break;
        }
        var best = Error(even) <= Error(fields) ? even : fields;
        for (var round = 0; round < Rounds && fields.Length <= MostTried; round++)
        {
            var before = best;
            for (var i = 0; i < best.Length; i++)
                best = Tried(best, i);
            if (best.SequenceEqual(before))
                break;
        }
        return best;
    }

    /// <summary>The worst error along the chain of hoopings; without bound where fields do not reach each other.</summary>
    internal double Error(ImmutableArray<Field> fields) =>
        task.Rules is { } rules ? SewingOrder.WorstError(fields, rules, task.Bounds.Centre, held) : 0;

    /// <summary>The field moved to whichever end or middle of its room fits best.</summary>
    private ImmutableArray<Field> Tried(ImmutableArray<Field> fields, int i)
    {
        if (Room(fields, i) is not { } room)
            return fields;
        var (best, least) = (fields, Error(fields));
        foreach (var y in new[] { room.Top, fields[i].Centre.Y, room.Centre.Y, room.Bottom }.Distinct())
        foreach (var x in new[] { room.Left, fields[i].Centre.X, room.Centre.X, room.Right }.Distinct())
        {
            var moved = Moved(fields, i, new(x, y));
            if (moved != fields && Error(moved) is var error && error < least * 0.999)
                (best, least) = (moved, error);
        }
        return best;
    }

    /// <summary>The fields with one of them moved, unless links are lost or a hoop would lie where none may.</summary>
    private ImmutableArray<Field> Moved(ImmutableArray<Field> fields, int i, Point centre)
    {
        var moved = task.Template.At(centre, fields[i].Turn);
        if (moved.Centre == fields[i].Centre || task.Forbids(moved))
            return fields;
        var all = fields.SetItem(i, moved);
        return task.Rules is { } rules && Links.Groups(all, rules).Count > Links.Groups(fields, rules).Count
            ? fields
            : all;
    }

    /// <summary>Where the centre of a field may lie for it to cover what no other one does; null for a fixed field.</summary>
    private Box? Room(ImmutableArray<Field> fields, int i)
    {
        if (task.Fixed.Contains(fields[i]))
            return null;
        var own = task.Template.Ground(fields[i]);
        var others = fields
            .Where((_, j) => j != i)
            .Select(task.Template.Ground)
            .Where(g => g.Meets(own))
            .Select(task.Inner)
            .ToArray();
        var need = Box.Empty;
        foreach (var whole in task.Wholes)
            if (
                own.Contains(whole) && !fields.Where((_, j) => j != i).Any(f => task.Template.Ground(f).Contains(whole))
            )
                need = need.Joined(whole);
        for (var row = Index(ys, own.Top); row < cells.Rows && ys[row] < own.Bottom; row++)
        {
            for (var column = Index(xs, own.Left); column < cells.Columns && xs[column] < own.Right; column++)
            {
                if (!cells.Touched(column, row))
                    continue;
                var cell = new Box(xs[column], ys[row], xs[column + 1], ys[row + 1]);
                if (!Array.Exists(others, o => o.Contains(cell)))
                    need = need.Joined(task.Around(cell));
            }
        }
        need = need.Common(own);
        if (need.IsEmpty)
            return null;
        // Half a step of the tape to spare: centres move to its grid.
        var (halfX, halfY) = ((own.Width / 2) - (Units.TapeStep / 2), (own.Height / 2) - (Units.TapeStep / 2));
        var room = new Box(need.Right - halfX, need.Bottom - halfY, need.Left + halfX, need.Top + halfY);
        var at = fields[i].Centre;
        if (room.Left > room.Right)
            room = room with { Left = at.X, Right = at.X };
        return room.Top > room.Bottom ? room with { Top = at.Y, Bottom = at.Y } : room;
    }

    private static int Index(int[] lines, int value)
    {
        var found = Array.BinarySearch(lines, value);
        return Math.Max(0, found >= 0 ? found : ~found - 1);
    }

    private static int[] Lines(int from, int to, int step)
    {
        var count = Math.Max(1, (to - from) / step);
        return [.. Enumerable.Range(0, count + 1).Select(i => from + (int)((long)(to - from) * i / count))];
    }
}
