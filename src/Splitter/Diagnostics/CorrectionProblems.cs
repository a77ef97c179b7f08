using System.Collections.Immutable;
using Splitter.Correcting;
using Splitter.Geometry;
using Splitter.Planning;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>
/// What is wrong with what was measured: SPL4000 to SPL4999, with <see cref="CorrectedTapeProblems"/>.
/// </summary>
internal static class CorrectionProblems
{
    internal static Diagnostic NoSuchPart(Place place, string part, ImmutableArray<string> letters) =>
        Diagnostic.Error(
            4001,
            place,
            $"there is no part '{part}'; "
                + (
                    letters.FirstOrDefault(l => l.Equals(part, StringComparison.OrdinalIgnoreCase)) is { } meant
                        ? $"did you mean '{meant}'?"
                        : $"parts are lettered from A to {letters[^1]}"
                )
        );

    internal static Diagnostic FirstPart(Place place, string part) =>
        Diagnostic.Error(
            4002,
            place,
            $"part {part} is sewn first and meets no sewn work; if it lies wrong, unpick it and mount the cloth again"
        );

    /// <param name="holes">Places that show both ways.</param>
    internal static Diagnostic NoSuchPlace(MeasuredOffset offset, string part, ImmutableArray<string> holes) =>
        Diagnostic.Error(
            4003,
            offset.Place,
            $"part {part} has no cross and no corner '{offset.At}'; "
                + (
                    holes.FirstOrDefault(h => h.Equals(offset.At, StringComparison.OrdinalIgnoreCase)) is { } meant
                        ? $"did you mean '{meant}'?"
                        : $"name some of {string.Join(", ", holes)}"
                )
        );

    internal static Diagnostic Twice(MeasuredOffset offset) =>
        Diagnostic.Error(4004, offset.Place, $"'{offset.At}' is measured twice; leave one of the two out");

    internal static Diagnostic SameHole(MeasuredOffset offset, string other) =>
        Diagnostic.Error(
            4004,
            offset.Place,
            $"'{offset.At}' and '{other}' are the same hole; leave one of the two out, or it counts twice"
        );

    internal static Diagnostic TooFar(MeasuredOffset offset, int most) =>
        Diagnostic.Error(
            4005,
            offset.Place,
            Invariant($"'{offset.At}' is off by more than {most / Units.Millimetre} mm; measure again, or ")
                + "unpick its crosses, if it sewed any, and set the part again"
        );

    /// <param name="count">How many of them show both ways.</param>
    /// <param name="edges">There are others.</param>
    internal static Diagnostic HowMany(Place place, int count, int most, bool edges, ImmutableArray<string> holes) =>
        Diagnostic.Error(
            4006,
            place,
            Invariant($"a move needs 2 to {most} measured places that show how far off they are both ways, and ")
                + Invariant($"there {(count == 1 ? "is" : "are")} {count}; ")
                + (edges ? "a cross on an edge or a line shows only how far off it is across; " : "")
                + $"measure at some of {string.Join(", ", holes)}"
        );

    /// <param name="across">The way in which it shows something, as the hoop lies before the person.</param>
    internal static Diagnostic AlongEdge(MeasuredOffset offset, FieldPoint across)
    {
        // Within 20 degrees of level or upright a person calls it so.
        var (u, v) = (Math.Abs(across.U), Math.Abs(across.V));
        return Diagnostic.Warning(
            4014,
            offset.Place,
            $"cross {offset.At} lies on an edge or a line, and shows only how far off it is across, here "
                + (
                    v * 11 < u * 4 ? "to the right or left"
                    : u * 11 < v * 4 ? "up or down"
                    : "aslant"
                )
                + "; what was read along it is not used"
        );
    }

    internal static Diagnostic TooNear(Place place, int apart, IEnumerable<string> holes) =>
        Diagnostic.Error(
            4007,
            place,
            Invariant($"all measured places lie within {apart / Units.Millimetre} mm, where a turn cannot ")
                + Invariant($"be seen; measure farther apart, at some of {string.Join(", ", holes)}")
        );

    internal static Diagnostic Contradictory(Place place, double residual, OddFigure? odd) =>
        Diagnostic.Error(
            4010,
            place,
            "no move and no stretch of the cloth explains these figures: on average the places would still be "
                + Invariant($"{residual / Units.Millimetre:0.00} mm off; {Again(odd)}measure again, ")
                + "sideways and upwards, and look whether the cloth lies flat. If they stay, unpick its "
                + "crosses, if it sewed any, and set the part again"
        );

    internal static Diagnostic Stretched(Place place, GrainStretch stretch, double most, OddFigure? odd) =>
        Diagnostic.Error(
            4011,
            place,
            $"the cloth has {MoveWords.Given(stretch.Warp, stretch.Weft)}, not only moved: the part would have to "
                + $"become {MoveWords.Shares(stretch.Warp, stretch.Weft)}, "
                + Invariant($"and 'registration.follow-stretch' allows {most * 100:0.##} %; {Again(odd)}unpick its ")
                + "crosses, if it sewed any, press the cloth without pulling it, and set the part again"
                + (odd is null ? ". If one figure may be wrong, measure at a further place" : "")
        );

    internal static Diagnostic WhichHoop(Place place, IEnumerable<string> hoops) =>
        Diagnostic.Error(
            4013,
            place,
            $"which hoop is it in? Add one of {string.Join(" or ", hoops.Select(h => $"'--hoop {h}'"))}"
        );

    internal static Diagnostic NotUnderstood(Place place, string at, string why) =>
        Diagnostic.Error(
            4020,
            place,
            $"after '{at}': {why}{(why.EndsWith('?') ? "" : ".")} "
                + "Write a place, then how far the new stitch lies from the old: "
                + "'--at A6 0.6 mm right 0.2 mm down'"
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

    private static string Again(OddFigure? odd) =>
        odd is null
            ? ""
            : $"if {odd.Name} were {MoveWords.Of(odd.Right, odd.Up)}, all would agree, so measure there first; ";
}
