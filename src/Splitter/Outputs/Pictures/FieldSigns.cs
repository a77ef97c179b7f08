using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// Where the letters of fields stand: each on ground that its own part sews, best where no other field lies, and beside
/// small motifs rather than on them.
/// </summary>
internal sealed class FieldSigns
{
    /// <summary>Places that are looked at along each side of a field.</summary>
    private const int Places = 24;

    /// <summary>A shape that is no larger than this either way is a motif, in heights of a letter.</summary>
    private const int MotifSize = 14;

    /// <summary>
    /// In heights of a letter the side of a field that has room for its own letter and no more: words of seams and
    /// corners would hide it. Looked at: at 11 they do, at 16 they do not.
    /// </summary>
    private const int Crowded = 13;

    /// <summary>What these cost, as <see cref="LabelRoom.Cost"/> counts.</summary>
    private const double OnMotif = 20,
        OnOtherField = 8,
        OffOwnGround = 30,
        OffMiddle = 4;

    private readonly Plan plan;
    private readonly ImmutableArray<Box> motifs;
    private readonly LabelRoom room;
    private readonly int letters;

    internal FieldSigns(Drawing drawing, Plan plan, LabelRoom room, int letters)
    {
        (this.plan, this.room, this.letters) = (plan, room, letters);
        motifs =
        [
            .. drawing
                .Shapes.Select(s => (s.KeepWhole, s.Footprint.Bounds))
                .Where(s => s.KeepWhole || Math.Max(s.Bounds.Width, s.Bounds.Height) <= MotifSize * letters)
                .Select(s => s.Bounds),
        ];
    }

    /// <summary>Fields are so small on the map that it shows little more than which part is where.</summary>
    internal static bool AreCrowded(Plan plan, int letters) =>
        plan.Hoopings.Length > 1 && (plan.Hoop.Width + plan.Hoop.Height) / 2 < Crowded * letters;

    /// <summary>The middle of a part's letter on the drawing; the place is taken from now on.</summary>
    /// <param name="shift">From the drawing to the page.</param>
    internal Point Place(int index, FieldSign sign, Point shift)
    {
        var field = plan.Hoopings[index].Field;
        var owns = Polygons.Containment(plan.Hoopings[index].Territory);
        var reach = Reach(field, sign);
        var others = plan.Hoopings.Where((_, i) => i != index).Select(h => h.Field.Bounds).Where(reach.Meets).ToList();
        var motifsHere = motifs.Where(reach.Meets).ToList();
        var here = room.Near(Moved(reach, shift));
        var (best, least) = (field.Centre, double.PositiveInfinity);
        for (var row = 1; row < Places; row++)
        {
            var across = sign.At(At(0, row)).Joined(sign.At(At(Places, row)));
            var motifsBeside = motifsHere.Where(across.Meets).ToList();
            for (var column = 1; column < Places; column++)
            {
                var at = At(column, row);
                var box = sign.At(at);
                var middle = Math.Max(Math.Abs(column - (Places / 2)), Math.Abs(row - (Places / 2))) * 2.0 / Places;
                var cost =
                    here.Cost(Moved(box, shift))
                    + (OnMotif * Hidden(motifsBeside, box))
                    + (OnOtherField * Share(others, box))
                    + (owns(at.X, at.Y) ? 0 : OffOwnGround)
                    + (OffMiddle * middle);
                if (cost < least)
                    (best, least) = (at, cost);
            }
        }
        room.Take(Moved(sign.At(best), shift));
        return best;

        Point At(int column, int row) =>
            new(
                field.Usable.Left + (field.Usable.Width * column / Places),
                field.Usable.Top + (field.Usable.Height * row / Places)
            );
    }

    /// <summary>All that a field's sign may cover, and what is right beside it.</summary>
    private Box Reach(Field field, FieldSign sign)
    {
        var (topLeft, bottomRight) = (
            new Point(field.Usable.Left, field.Usable.Top),
            new Point(field.Usable.Right, field.Usable.Bottom)
        );
        return sign.At(topLeft).Joined(sign.At(bottomRight)).Grown(letters);
    }

    /// <summary>A small motif counts as much as a large one: what matters is how much of each is hidden.</summary>
    private static double Hidden(List<Box> motifs, Box box)
    {
        var sum = 0.0;
        foreach (var motif in motifs)
            if (motif.Common(box) is { IsEmpty: false } common)
                sum +=
                    (double)common.Width
                    * common.Height
                    / Math.Min((double)box.Width * box.Height, Math.Max(1.0, (double)motif.Width * motif.Height));
        return sum;
    }

    private static Box Moved(Box box, Point by) =>
        new(box.Left + by.X, box.Top + by.Y, box.Right + by.X, box.Bottom + by.Y);

    private static double Share(IEnumerable<Box> boxes, Box box)
    {
        var sum = 0.0;
        foreach (var other in boxes)
            if (other.Common(box) is { IsEmpty: false } common)
                sum += (double)common.Width * common.Height / ((double)box.Width * box.Height);
        return sum;
    }
}
