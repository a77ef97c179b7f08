using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Planning;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// Rings and names for the marks that a part sews, over their stitches: a whole ring for a corner that is sewn first, a
/// dashed one for a corner that is sewn last, a large one for a cross.
/// </summary>
internal sealed class PartMarks
{
    /// <summary>Micrometres: heights of names and numbers, radii of rings, pens.</summary>
    private const int Names = 3300,
        Numbers = 2600,
        Ring = 1800,
        CrossRing = AlignmentStitch.Arm * 3 / 2,
        Pen = 300;

    private readonly ImmutableArray<Point> first;
    private readonly ImmutableArray<Point> last;
    private readonly ImmutableArray<Point> crosses;
    private readonly ImmutableArray<MarkName> names;

    /// <param name="lay">From the drawing to the page.</param>
    /// <param name="margin">How far names may stand outside of the field.</param>
    internal PartMarks(Plan plan, Part part, Func<Point, Point> lay, Box field, int margin)
    {
        var room = new LabelRoom(field.Grown(margin), Numbers);
        first = [.. part.Hooping.Takes.Select(i => lay(plan.Corners[i].At))];
        last = [.. part.Hooping.Gives.Select(i => lay(plan.Corners[i].At))];
        crosses = [.. part.Hooping.Alignments.Select(cross => lay(cross.At))];
        var corners = part.Hooping.Takes.Concat(part.Hooping.Gives).Select(i => plan.Corners[i]).ToList();
        room.Cross(field);
        foreach (var (at, x, y) in corners.Select(c => (lay(c.At), lay(c.ArmX), lay(c.ArmY))))
        {
            room.Take(Box.Around([at, x]));
            room.Take(Box.Around([at, y]));
            room.Take(Box.Around([at]).Grown(Ring));
        }
        foreach (var at in crosses)
            room.Take(Box.Around([at]).Grown(CrossRing));
        names =
        [
            .. corners.Select(c => MarkName.Of(c.Id, lay(c.At), lay(c.ArmX), lay(c.ArmY), room, Names, Ring)),
            .. crosses.Select((at, i) => MarkName.OfCross($"{i + 1}", at, room, Numbers, CrossRing)),
        ];
    }

    internal void Draw(Canvas canvas)
    {
        foreach (var name in names)
            name.DrawLine(canvas);
        foreach (var at in first)
            canvas.Ring(at, Ring, Pen, MarkInk.Corner);
        foreach (var at in last)
            canvas.Lines(
                Pen,
                MarkInk.Corner,
                100,
                Dashed.Cut([.. Circle.Around(at, Ring), Circle.Around(at, Ring)[0]], Ring / 2, Ring / 2)
            );
        foreach (var at in crosses)
            canvas.Ring(at, CrossRing, Pen, MarkInk.Alignment);
        foreach (var name in names)
            name.Draw(canvas);
    }
}
