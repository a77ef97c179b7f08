using System.Collections.Immutable;
using Splitter.Parts;
using Splitter.Tapes;

namespace Splitter.Outputs.Tapes;

/// <summary>
/// A part to a tape. The tape starts at the field's centre. A move that is not sewn is a run of jumps to the very
/// place, then a stitch without length that puts the needle in there; at least <see cref="TapeRecord.TrimJumps"/> jumps
/// cut the thread, so that a long move that must not cut it ends with a stitch instead, as does a stitch that no record
/// holds. A stop stands between steps.
/// </summary>
internal static class PartTape
{
    internal static Tape Of(Part part, string title)
    {
        var records = ImmutableArray.CreateBuilder<TapeRecord>();
        var at = default(TapePoint);
        var step = 1;
        foreach (var visit in part.Visits)
        foreach (var to in LongMove.Stops(at, TapePoint.Of(visit), 1))
        {
            records.Add(new(TapeCommand.Jump, to.U - at.U, to.V - at.V));
            at = to;
        }
        foreach (var needle in NeedleWalk.Of(part))
        {
            for (; step < needle.Step.Number; step++)
                records.Add(new(TapeCommand.Stop, 0, 0));
            foreach (var to in Jumps(needle, at))
            {
                records.Add(new(TapeCommand.Jump, to.U - at.U, to.V - at.V));
                at = to;
            }
            records.Add(new(TapeCommand.Stitch, needle.At.U - at.U, needle.At.V - at.V));
            at = needle.At;
        }
        return new(TapeLabel.Of(title, part.Letter), records.ToImmutable());
    }

    /// <summary>Where jumps lead before the needle goes in.</summary>
    private static IEnumerable<TapePoint> Jumps(Penetration needle, TapePoint at)
    {
        if (needle.Arrival == Arrival.Sewn)
            return LongMove.Between(at, needle.At);
        var jumps =
            needle.Arrival == Arrival.Trimmed ? TapeRecord.TrimJumps
            : at == needle.At ? 0
            : 1;
        TapePoint[] stops = [.. LongMove.Stops(at, needle.At, jumps)];
        var isUncut = needle is { Arrival: Arrival.Moved, IsFirst: false };
        return stops.Take(isUncut && stops.Length == TapeRecord.TrimJumps ? stops.Length - 1 : stops.Length);
    }
}
