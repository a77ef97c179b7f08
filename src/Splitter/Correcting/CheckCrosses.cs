using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Planning;

namespace Splitter.Correcting;

/// <summary>
/// Crosses that a corrected tape sews before all else, at the measured places as they are after the move: each has to
/// meet what is there. A figure that was noted the wrong way round, and a machine that lays the tape elsewhere, show
/// before anything is sewn that stays.
/// </summary>
internal static class CheckCrosses
{
    /// <summary>
    /// Half the length of a stroke at the edge of a part at least, µm: shorter ones have no middle that one sees.
    /// Common practice, no source.
    /// </summary>
    private const int Shortest = Units.Millimetre;

    /// <summary>A shift and a turn are seen at so many crosses.</summary>
    private const int Fewest = 2;

    /// <summary>In the order in which the places were measured.</summary>
    /// <param name="planned">
    /// The part as planned: corners often lie at its edge, and strokes past that would take the tape further than the
    /// part.
    /// </param>
    internal static ImmutableArray<AlignmentStitch> Of(Part planned, Judgement judged, ImmutableArray<Sighting> seen) =>
        [
            .. seen.Select(s =>
            {
                var at = judged.OnTape(s.At);
                return new AlignmentStitch(at, s.Donor, s.On)
                {
                    Stroke = Math.Clamp(RoomAround(planned, at), Shortest, AlignmentStitch.Arm),
                };
            }),
        ];

    /// <summary>
    /// The places that a cross has room at; all of them where fewer than two have, and no move is checked by one.
    /// </summary>
    internal static ImmutableArray<Sighting> Shown(Field field, Judgement judged, ImmutableArray<Sighting> seen)
    {
        var shown = seen.RemoveAll(s => FieldRoom.Around(field, judged.OnTape(s.At)) < Shortest);
        return shown.Length < Fewest ? seen : shown;
    }

    private static int RoomAround(Part part, Point at) =>
        FieldBox.Around(part.Field, part.Steps).RoomAround(part.Field.ToField(at));

    internal static Step Step(ImmutableArray<AlignmentStitch> crosses, Part part, Step next, StopTexts stops) =>
        new(
            1,
            StepKind.Alignment,
            null,
            PartBuilder.Moves([.. crosses.Select(MarkStitcher.Cross)]),
            [
                .. stops.LookAtMoved(crosses.Length),
                .. part.TakenOut.IsEmpty || next.Kind != StepKind.Body ? [] : new[] { stops.TakeOut(part.TakenOut) },
                .. stops.Change(null, next.Kind, next.Thread) is { } change ? [change] : Array.Empty<string>(),
            ]
        );
}
