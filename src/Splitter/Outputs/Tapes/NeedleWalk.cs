using Splitter.Cutting.Tapes;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Stitching;

namespace Splitter.Outputs.Tapes;

/// <summary>How the needle comes to where it goes in.</summary>
internal enum Arrival
{
    /// <summary>With a stitch.</summary>
    Sewn,

    /// <summary>Without sewing, the thread uncut (or cut by the stop before it).</summary>
    Moved,

    /// <summary>Without sewing, after the thread is cut.</summary>
    Trimmed,
}

/// <summary>One needle penetration of a part.</summary>
/// <param name="IsFirst">It is the first of its step.</param>
internal readonly record struct Penetration(
    Step Step,
    Block Block,
    Stitch Stitch,
    TapePoint At,
    Arrival Arrival,
    bool IsFirst
);

/// <summary>
/// Every penetration of a part in sewing order: what tape, table and figures are made from, so that they agree.
/// </summary>
internal static class NeedleWalk
{
    internal static IEnumerable<Penetration> Of(Part part)
    {
        foreach (var step in part.Steps)
        {
            TapePoint? last = null;
            foreach (var (number, move) in step.Moves.Index())
            {
                var sewing = false;
                var stitches = LeadsOn(step, number) ? move.Block.Stitches[..^1] : move.Block.Stitches;
                foreach (var stitch in stitches)
                {
                    var at = TapePoint.Of(part.Field, stitch.At);
                    // A block that begins where the last one ended is sewn on from there.
                    var isThere = last == at && !move.Trim;
                    var arrival =
                        sewing || isThere ? Arrival.Sewn
                        : move.Trim && last is not null ? Arrival.Trimmed
                        : Arrival.Moved;
                    if (sewing && !IsOneStitch(stitch, last!.Value, at))
                    {
                        foreach (var between in LongMove.Between(last!.Value, at))
                            yield return new(step, move.Block, Laid(part, stitch, between), between, arrival, false);
                    }
                    // The needle is in that hole already, but what a tape had two holes for has two.
                    if (sewing || !isThere || stitch.Source == StitchSource.Original)
                        yield return new(step, move.Block, stitch, at, arrival, last is null);
                    (last, sewing) = (at, true);
                }
            }
        }
    }

    /// <summary>A way of ours that ends in a hole of the tape, where the next block begins: that is one hole.</summary>
    private static bool LeadsOn(Step step, int move) =>
        step.Moves[move].Block.Stitches is [_, .., { Source: StitchSource.Made } end]
        && move + 1 < step.Moves.Length
        && step.Moves[move + 1] is { Trim: false, Block.Stitches: [{ Source: StitchSource.Original } start, ..] }
        && start.At == end.At;

    /// <summary>A tape's stitch across a column is one stitch, however long it is.</summary>
    private static bool IsOneStitch(Stitch stitch, TapePoint from, TapePoint to) =>
        stitch.Source is StitchSource.Original or StitchSource.Repeated
        && stitch.Use is StitchUse.Satin or StitchUse.Underlay
        && LongMove.LeavesThreadUncut(from, to);

    /// <summary>Any other that is longer than a record is sewn in several.</summary>
    private static Stitch Laid(Part part, Stitch stitch, TapePoint at) =>
        stitch with
        {
            At = part.Field.ToDesign(new(at.U * Units.TapeStep, at.V * Units.TapeStep)),
            // The tape had one hole where its stitch ended, and none on the way.
            Source = stitch.Source == StitchSource.Original ? StitchSource.Divided : stitch.Source,
        };
}
