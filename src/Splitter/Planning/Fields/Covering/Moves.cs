using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>Where one field of a cover may be moved while the others stay, so that all stays covered.</summary>
/// <param name="grid">Holds the cover.</param>
internal sealed class Moves(CoverTask task, CoverGrid grid)
{
    /// <summary>Steps from where a field lies, µm.</summary>
    internal static readonly ImmutableArray<int> Steps =
    [
        -20 * Units.Millimetre,
        -5 * Units.Millimetre,
        -Units.Millimetre,
        Units.Millimetre,
        5 * Units.Millimetre,
        20 * Units.Millimetre,
    ];

    /// <summary>Places for the centre of a field: along each axis, and in the corners of its room.</summary>
    internal IEnumerable<Point> Of(ImmutableArray<Field> fields, int i)
    {
        if (Room(fields[i]) is not { } room)
            return [];
        var (xs, ys) = (
            Places(fields, i, room.Left, room.Right, b => (b.Left, b.Right), p => p.X),
            Places(fields, i, room.Top, room.Bottom, b => (b.Top, b.Bottom), p => p.Y)
        );
        var at = fields[i].Centre;
        return xs.Select(x => new Point(x, at.Y))
            .Concat(ys.Select(y => new Point(at.X, y)))
            .Concat(
                from x in new[] { room.Left, room.Right }
                from y in new[] { room.Top, room.Bottom }
                select new Point(x, y)
            );
    }

    /// <summary>
    /// Where a centre is tried along one axis: steps, both ends of its room, and flush with other fields.
    /// </summary>
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

    /// <summary>
    /// Where the centre of a field may lie for it to cover what no other one does; null for a fixed field.
    /// </summary>
    internal Box? Room(Field field)
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
