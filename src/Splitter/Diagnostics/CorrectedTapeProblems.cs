using Splitter.Correcting;
using Splitter.Geometry;
using Splitter.Planning;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>
/// What a move makes of a part, and tapes that do not go with it: SPL4012 to SPL4018 and SPL4030 to SPL4033.
/// </summary>
internal static class CorrectedTapeProblems
{
    /// <param name="room">How far the part could go that way.</param>
    /// <param name="margin">What of the field stays free in any case.</param>
    internal static Diagnostic LeavesField(Place place, string part, string side, int beyond, int room, int margin) =>
        Diagnostic.Error(
            4012,
            place,
            Invariant($"moved so, part {part} would reach {beyond / (double)Units.Millimetre:0.0} mm past ")
                + $"what can be sewn, at the {side} of the hoop: the field less the last "
                + Invariant($"{Units.ToMillimetres(margin)} mm at its edge. ")
                + Invariant($"Up to {room / (double)Units.Millimetre:0.0} mm that way would do; measure again, or ")
                + "unpick its crosses, if it sewed any, and set the part again, nearer to its place"
        );

    internal static Diagnostic NearEdge(Place place, string part, string side, int left, int clearance) =>
        Diagnostic.Warning(
            4015,
            place,
            Invariant($"moved so, part {part} is sewn up to {left / (double)Units.Millimetre:0.0} mm from the ")
                + $"field's edge at the {side} of the hoop, within the "
                + Invariant($"{Units.ToMillimetres(clearance)} mm that 'fields.clearance' keeps free; see in the ")
                + "machine's preview that it lies inside, and that the foot clears the frame there"
        );

    /// <param name="more">A place to measure at, too, and what the join would then be; null where none helps.</param>
    internal static Diagnostic Uncovered(
        Place place,
        string earlier,
        string later,
        JoinChange join,
        (string At, PartJoin Then)? more
    ) =>
        Diagnostic.Warning(
            4016,
            place,
            $"{earlier} and {later} may then miss each other by up to {Mm(join.After.Within95)} mm, and their "
                + $"overlap covers {Mm(join.After.Covers)} mm (as planned: up to {Mm(join.Before.Within95)} mm); "
                + (
                    more is var (at, then)
                        ? $"measure at {at}, too: it would be up to {Mm(then.Within95)} mm"
                            + (then.IsCovered ? "" : ", and a motif would have to cover the rest")
                        : "no other place to measure at would help: set the part again, or cover the join with a motif"
                )
        );

    internal static Diagnostic OffCentre(Place place, string part) =>
        Diagnostic.Warning(
            4017,
            place,
            $"the corrected tape of part {part} cannot have the extents of its own tape, since it moves so far that "
                + "there is no room for them in the field; a machine that centres designs lays it elsewhere, and the "
                + "crosses it begins with will show that"
        );

    internal static Diagnostic NoCross(Place place, string at) =>
        Diagnostic.Warning(
            4018,
            place,
            $"moved so, a cross at {at} has no room in the field; it is left out, and the others show whether the move "
                + "is right"
        );

    /// <param name="why">What changed, as far as the manifest beside it tells; null if it does not.</param>
    internal static Diagnostic OtherTape(string file, string part, string? why) =>
        Diagnostic.Error(
            4030,
            Place.Whole(file),
            $"this is not part {part} as the recipe makes it now, so neither its stitches nor its corners are those "
                + $"that would be moved{(why is null ? "" : $" ({why})")}; put recipe and artwork back as they were, "
                + "or see what changed with 'splitter check'"
        );

    internal static Diagnostic EarlierCorrection(string folder, string part) =>
        Diagnostic.Warning(
            4031,
            Place.Whole(folder),
            $"the corrected tape of part {part} that an earlier run left here does not count any more; do not sew it: "
                + "delete the folder"
        );

    /// <summary>After a call that was refused: whether what was measured for it still holds, nobody knows.</summary>
    internal static Diagnostic OfEarlierCall(string folder, string part) =>
        Diagnostic.Warning(
            4033,
            Place.Whole(folder),
            $"the corrected tape of part {part} here is by an earlier call, and this one has not changed it; sew it "
                + "only if what was measured for it still holds"
        );

    internal static Diagnostic Replaced(string folder, string part) =>
        Diagnostic.Warning(
            4032,
            Place.Whole(folder),
            $"the corrected tape of part {part} that was here is replaced by another; load it afresh, and measure "
                + "from the part's own tape only: what was read with the earlier one does not count from there"
        );

    private static string Mm(int micrometres) => Invariant($"{micrometres / (double)Units.Millimetre:0.00}");
}
