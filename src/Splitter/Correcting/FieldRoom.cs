using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Planning;

namespace Splitter.Correcting;

/// <summary>
/// Whether a moved part still lies in its field. What the recipe keeps free at the field's edge is there for this: a
/// part may be moved into it, but for the last of it.
/// </summary>
internal static class FieldRoom
{
    /// <summary>
    /// What stays free, µm: hoops are given in whole millimetres or fractions of an inch, and a machine may refuse
    /// what ends on its limit. Common practice, no source.
    /// </summary>
    private const int LastMargin = Units.Millimetre;

    /// <summary>
    /// The part, with a warning if it comes nearer to the edge than planned; or why it cannot be sewn.
    /// </summary>
    /// <param name="planned">What is left to sew before it is moved: it says how far a move could go.</param>
    internal static Result<Part> Within(PartOffsets asked, IEnumerable<Step> planned, Part part)
    {
        var (field, clearance) = (part.Field, part.Field.Clearance);
        var (side, reach) = Reaches(field, part.Steps).MaxBy(r => r.Beyond);
        if (-reach >= Margin(field))
        {
            // Crosses are few stitches; what is told is how near the part itself comes.
            var (near, own) = Reaches(field, part.Steps.Where(s => s.Kind != StepKind.Alignment)).MaxBy(r => r.Beyond);
            return -own >= clearance
                ? Result.Of(part)
                : Result.Of(part, [CorrectedTapeProblems.NearEdge(asked.Place, part.Letter, near, -own, clearance)]);
        }
        var room = -Reaches(field, planned).Single(r => r.Side == side).Beyond - Margin(field);
        return Result.Fail<Part>(
            CorrectedTapeProblems.LeavesField(
                asked.Place,
                part.Letter,
                side,
                reach + Margin(field),
                Math.Max(0, room),
                Margin(field)
            )
        );
    }

    /// <summary>What of a field stays free in any case, µm.</summary>
    internal static int Margin(Field field) => Math.Min(field.Clearance, LastMargin);

    /// <summary>How far one may sew around a place to every side; negative outside.</summary>
    internal static int Around(Field field, Point at)
    {
        var (u, v) = ((field.Hoop.Width / 2) - Margin(field), (field.Hoop.Height / 2) - Margin(field));
        return new FieldBox(-u, -v, u, v).RoomAround(field.ToField(at));
    }

    /// <summary>How far stitches reach past the field's edge, at each side; negative for what is free.</summary>
    private static (string Side, int Beyond)[] Reaches(Field field, IEnumerable<Step> steps)
    {
        var (width, height) = (field.Hoop.Width / 2, field.Hoop.Height / 2);
        var box = FieldBox.Around(field, steps);
        return
        [
            ("right", box.Right - width),
            ("top", box.Top - height),
            ("left", -box.Left - width),
            ("bottom", -box.Bottom - height),
        ];
    }
}
