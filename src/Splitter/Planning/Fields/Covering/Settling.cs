using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// Moves the fields of a cover within the room that they have, so that they meet better: neighbours share more ground,
/// corners lie further apart, and the way to the first hooping is shorter. What only one field covers, it goes on covering.
/// </summary>
internal sealed class Settling
{
    /// <summary>Pairs of fields that are looked at for all covers together: some tenths of a second.</summary>
    private const long MostWork = 40_000_000;

    /// <summary>Gains smaller than this share of what there is are not worth a round.</summary>
    private const double LeastGain = 1e-4;

    /// <summary>Steps from where a field lies, µm.</summary>
    private static readonly ImmutableArray<int> Steps =
    [
        -20 * Units.Millimetre,
        -5 * Units.Millimetre,
        -Units.Millimetre,
        Units.Millimetre,
        5 * Units.Millimetre,
        20 * Units.Millimetre,
    ];

    private readonly CoverTask task;
    private readonly CoverGrid grid;
    private readonly Misfits misfits;
    private long work;

    internal Settling(CoverTask task, CoverGrid grid, Misfits misfits) =>
        (this.task, this.grid, this.misfits) = (task, grid, misfits);

    /// <summary>The covers settled, the one that fits best first; of equal ones the one that came first.</summary>
    internal ImmutableArray<ImmutableArray<Field>> Settled(ImmutableArray<ImmutableArray<Field>> covers) =>
        [
            .. covers
                .Select((cover, i) => Settled(cover, MostWork / covers.Length * (i + 1)))
                .Select(cover => (Cover: cover, Sum: misfits.Sum(cover)))
                .OrderBy(settled => settled.Sum)
                .Select(settled => settled.Cover),
        ];

    private ImmutableArray<Field> Settled(ImmutableArray<Field> fields, long mostWork)
    {
        grid.Reset(fields);
        var (open, sum) = (grid.Open, misfits.Sum(fields));
        while (work < mostWork)
        {
            var before = sum;
            for (var i = 0; i < fields.Length && work < mostWork; i++)
                (fields, sum) = Moved(fields, i, sum, open);
            if (!(sum < before * (1 - LeastGain)))
                break;
        }
        return fields;
    }

    /// <summary>The fields with one of them moved to where they all meet best.</summary>
    private (ImmutableArray<Field> Fields, double Sum) Moved(ImmutableArray<Field> fields, int i, double sum, int open)
    {
        if (Room(fields[i]) is not { } room)
            return (fields, sum);
        var best = fields;
        var (xs, ys) = (
            Places(fields, i, room.Left, room.Right, b => (b.Left, b.Right), p => p.X),
            Places(fields, i, room.Top, room.Bottom, b => (b.Top, b.Bottom), p => p.Y)
        );
        var at = fields[i].Centre;
        foreach (
            var place in xs.Select(x => new Point(x, at.Y))
                .Concat(ys.Select(y => new Point(at.X, y)))
                .Concat(
                    from x in new[] { room.Left, room.Right }
                    from y in new[] { room.Top, room.Bottom }
                    select new Point(x, y)
                )
        )
            Try(place);
        return (best, sum);

        void Try(Point place)
        {
            var moved = task.Template.At(place, fields[i].Turn);
            if (moved.Centre == fields[i].Centre || task.Forbids(moved))
                return;
            var all = fields.SetItem(i, moved);
            work += fields.Length * fields.Length;
            if (misfits.Sum(all) is var found && found < sum)
            {
                grid.Add(best[i], -1);
                grid.Add(moved, 1);
                if (grid.Open <= open)
                {
                    (best, sum) = (all, found);
                    return;
                }
                grid.Add(moved, -1);
                grid.Add(best[i], 1);
            }
        }
    }

    /// <summary>Where a centre is tried along one axis: steps, both ends of its room, and flush with other fields.</summary>
    private static SortedSet<int> Places(
        ImmutableArray<Field> fields,
        int i,
        int from,
        int to,
        Func<Box, (int From, int To)> ends,
        Func<Point, int> along
    )
    {
        var own = fields[i];
        var (at, mine) = (along(own.Centre), ends(own.Usable));
        var places = new SortedSet<int> { from, to };
        foreach (var step in Steps)
            places.Add(Math.Clamp(at + step, from, to));
        foreach (var other in fields)
        {
            if (other == own || !other.Usable.Grown(Steps[^1]).Meets(own.Usable))
                continue;
            var others = ends(other.Usable);
            places.Add(Math.Clamp(at + others.From - mine.From, from, to));
            places.Add(Math.Clamp(at + others.To - mine.To, from, to));
        }
        return places;
    }

    /// <summary>Where the centre of a field may lie for it to cover what no other one does; null for a fixed field.</summary>
    private Box? Room(Field field)
    {
        if (task.Fixed.Contains(field))
            return null;
        var own = task.Template.Ground(field);
        var need = grid.Needed(field).Common(own);
        if (need.IsEmpty)
            need = Box.Around([own.Centre]);
        var (halfX, halfY) = (own.Width / 2, own.Height / 2);
        var room = new Box(need.Right - halfX, need.Bottom - halfY, need.Left + halfX, need.Top + halfY);
        // Whole steps of the tape's grid, inwards; where there is none, where the field lies.
        var (left, right) = Stepped(room.Left, room.Right, field.Centre.X);
        var (top, bottom) = Stepped(room.Top, room.Bottom, field.Centre.Y);
        return new(left, top, right, bottom);
    }

    private static (int From, int To) Stepped(int from, int to, int at)
    {
        var first = at - ((at - from) / Units.TapeStep * Units.TapeStep);
        var last = at + ((to - at) / Units.TapeStep * Units.TapeStep);
        return from > at || to < at ? (at, at) : (first, last);
    }
}
