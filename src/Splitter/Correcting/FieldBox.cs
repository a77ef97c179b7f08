using System.Collections.Immutable;
using Splitter.Parts;
using Splitter.Planning;

namespace Splitter.Correcting;

/// <summary>A box in a field as a machine counts: u right, v up, µm from the field's centre.</summary>
internal readonly record struct FieldBox(int Left, int Bottom, int Right, int Top)
{
    private int TwiceU => Left + Right;

    private int TwiceV => Bottom + Top;

    internal static FieldBox Around(Field field, IEnumerable<Step> steps)
    {
        var (left, bottom, right, top) = (int.MaxValue, int.MaxValue, int.MinValue, int.MinValue);
        foreach (var stitch in steps.SelectMany(s => s.Moves).SelectMany(m => m.Block.Stitches))
        {
            var at = field.ToField(stitch.At);
            (left, right) = (Math.Min(left, at.U), Math.Max(right, at.U));
            (bottom, top) = (Math.Min(bottom, at.V), Math.Max(top, at.V));
        }
        return new(left, bottom, right, top);
    }

    /// <summary>How far it reaches around a place to every side; negative outside of it.</summary>
    internal int RoomAround(FieldPoint at) =>
        Math.Min(Math.Min(at.U - Left, Right - at.U), Math.Min(at.V - Bottom, Top - at.V));

    /// <summary>
    /// Where the needle has to go without sewing, so that a machine that lays a tape by the middle of its extents lays
    /// this one as it laid the other; none if it does so anyway. Extents are the other's, but for what reaches past
    /// them: they then grow by as much at the opposite side.
    /// </summary>
    /// <param name="planned">The extents of the tape as planned.</param>
    /// <param name="moved">Of the tape that is left to sew.</param>
    /// <remarks>
    /// None, too, where the opposite side has no room: a machine refuses what is larger than its field.
    /// </remarks>
    internal static ImmutableArray<FieldPoint> Visits(Field field, FieldBox planned, FieldBox moved)
    {
        // A tape begins in the middle of the field, and that is within its extents.
        var (from, to) = (planned.WithOrigin, moved.WithOrigin);
        var all = new FieldBox(
            Math.Min(Math.Min(from.Left, to.Left), from.TwiceU - to.Right),
            Math.Min(Math.Min(from.Bottom, to.Bottom), from.TwiceV - to.Top),
            Math.Max(Math.Max(from.Right, to.Right), from.TwiceU - to.Left),
            Math.Max(Math.Max(from.Top, to.Top), from.TwiceV - to.Bottom)
        );
        var margin = FieldRoom.Margin(field);
        var isTooLarge =
            Math.Max(-all.Left, all.Right) > (field.Hoop.Width / 2) - margin
            || Math.Max(-all.Bottom, all.Top) > (field.Hoop.Height / 2) - margin;
        return all == to || isTooLarge ? [] : [new(all.Left, all.Bottom), new(all.Right, all.Top)];
    }

    /// <summary>
    /// A machine that lays a tape by the middle of its extents lays both alike, without further visits.
    /// </summary>
    internal bool HasMiddleOf(FieldBox other) =>
        (WithOrigin.TwiceU, WithOrigin.TwiceV) == (other.WithOrigin.TwiceU, other.WithOrigin.TwiceV);

    private FieldBox WithOrigin => new(Math.Min(0, Left), Math.Min(0, Bottom), Math.Max(0, Right), Math.Max(0, Top));
}
