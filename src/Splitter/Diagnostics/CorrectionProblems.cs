using Splitter.Correcting;
using Splitter.Geometry;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>Why a part cannot be corrected: SPL4000 to SPL4999.</summary>
internal static class CorrectionProblems
{
    internal static Diagnostic NoSuchPart(Place place, string part, string last) =>
        Diagnostic.Error(4001, place, $"there is no part '{part}'; parts are lettered from A to {last}");

    internal static Diagnostic FirstPart(Place place, string part) =>
        Diagnostic.Error(
            4002,
            place,
            $"part {part} is sewn first and meets no sewn work; if it lies wrong, unpick it and mount the cloth again"
        );

    internal static Diagnostic NoSuchPlace(MeasuredOffset offset, string part, IEnumerable<string> names) =>
        Diagnostic.Error(
            4003,
            offset.Place,
            $"part {part} has no cross and no corner '{offset.At}'; name one of {string.Join(", ", names)}"
        );

    internal static Diagnostic Twice(MeasuredOffset offset) =>
        Diagnostic.Error(4004, offset.Place, $"'{offset.At}' is measured twice; leave one of the two out");

    internal static Diagnostic TooFar(MeasuredOffset offset, int most) =>
        Diagnostic.Error(
            4005,
            offset.Place,
            Invariant($"'{offset.At}' is off by more than {most / Units.Millimetre} mm; measure again, or ")
                + "unpick the crosses and set the part again"
        );

    internal static Diagnostic HowMany(Place place, int count, int most, IEnumerable<string> names) =>
        Diagnostic.Error(
            4006,
            place,
            Invariant($"a move needs 2 to {most} measured places, and there are {count}; measure at some ")
                + Invariant($"of {string.Join(", ", names)}")
        );

    internal static Diagnostic TooNear(Place place, int apart, IEnumerable<string> names) =>
        Diagnostic.Error(
            4007,
            place,
            Invariant($"all measured places lie within {apart / Units.Millimetre} mm, where a turn cannot ")
                + Invariant($"be seen; measure farther apart, at some of {string.Join(", ", names)}")
        );

    internal static Diagnostic Contradictory(Place place, double residual) =>
        Diagnostic.Error(
            4010,
            place,
            "no move and no stretch of the cloth explains these figures: on average the places would still be "
                + Invariant($"{residual / Units.Millimetre:0.00} mm off; measure again, ")
                + "sideways and upwards, and look whether the cloth lies flat. If they stay, unpick "
                + "the crosses and set the part again"
        );

    internal static Diagnostic Stretched(Place place, GrainStretch stretch, double most) =>
        Diagnostic.Error(
            4011,
            place,
            "the cloth has stretched, not only moved: the part would have to become "
                + Invariant($"{Share(stretch.Warp)} along the warp and {Share(stretch.Weft)} along the weft, ")
                + Invariant($"and 'registration.follow-stretch' allows {most * 100:0.##} %; unpick the crosses, ")
                + "press the cloth without pulling it, and set the part again. If one figure may be "
                + "wrong, measure at a third place"
        );

    /// <param name="room">How far the part could go that way.</param>
    /// <param name="clearance">What stays free at the field's edge.</param>
    internal static Diagnostic LeavesField(
        Place place,
        string part,
        string side,
        int beyond,
        int room,
        int clearance
    ) =>
        Diagnostic.Error(
            4012,
            place,
            Invariant($"moved so, part {part} would reach {beyond / (double)Units.Millimetre:0.0} mm past ")
                + $"the ground that may be sewn, at the {side} of the hoop: the field less the "
                + Invariant($"{Units.ToMillimetres(clearance)} mm that 'fields.clearance' keeps free at its edge. ")
                + Invariant($"Up to {room / (double)Units.Millimetre:0.0} mm that way would do; measure again, or ")
                + "unpick the crosses and set the part again, nearer to its place"
        );

    internal static Diagnostic WhichHoop(Place place, IEnumerable<string> hoops) =>
        Diagnostic.Error(
            4013,
            place,
            $"which hoop is it in? Add one of {string.Join(" or ", hoops.Select(h => $"'--hoop {h}'"))}"
        );

    internal static Diagnostic NotUnderstood(Place place, string at) =>
        Diagnostic.Error(
            4020,
            place,
            $"what follows '{at}' is no offset; write a place, then how far the new stitch lies from the old: "
                + "'--at 1 0.6 mm right 0.2 mm down'"
        );

    internal static Diagnostic NoUnit(Place place, string at, string number, string way) =>
        Diagnostic.Error(
            4023,
            place,
            $"'{number}' after '{at}' has no unit; write '{number} mm {way}' if millimetres are meant"
        );

    internal static Diagnostic BothWays(Place place, string one, string other) =>
        Diagnostic.Error(4021, place, $"an offset lies to one side: '{one}' or '{other}'; leave one of the two out");

    internal static Diagnostic NoWay(Place place) =>
        Diagnostic.Error(
            4022,
            place,
            "an offset says how far and which way; write 'right', 'left', 'up' or 'down' with a length, or 'up: 0 mm'"
        );

    internal static Diagnostic OtherTape(string file, string part) =>
        Diagnostic.Error(
            4030,
            Place.Whole(file),
            $"this is not part {part} as the recipe makes it now, so its stitches cannot be moved; put recipe "
                + "and artwork back as they were, or see what changed with 'splitter check'"
        );

    private static string Share(double share) =>
        share < 0 ? Invariant($"{-share * 100:0.00} % shorter") : Invariant($"{share * 100:0.00} % longer");
}
