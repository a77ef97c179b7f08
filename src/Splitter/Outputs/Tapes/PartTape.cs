using System.Collections.Immutable;
using Splitter.Parts;

namespace Splitter.Outputs.Tapes;

/// <summary>
/// A part to a tape. The tape starts at the field's centre. A move that is not sewn is a run of jumps to the very place,
/// then a stitch without length that puts the needle in there; at least <see cref="TapeRecord.TrimJumps"/> jumps cut the
/// thread. A stop stands between steps.
/// </summary>
internal static class PartTape
{
    internal static Tape Of(Part part, string title)
    {
        var records = ImmutableArray.CreateBuilder<TapeRecord>();
        var at = default(TapePoint);
        var step = 1;
        foreach (var needle in NeedleWalk.Of(part))
        {
            for (; step < needle.Step.Number; step++)
                records.Add(new(TapeCommand.Stop, 0, 0));
            if (needle.Arrival == Arrival.Sewn)
                Split(records, TapeCommand.Stitch, at, needle.At, 1);
            else
            {
                var jumps =
                    needle.Arrival == Arrival.Trimmed ? TapeRecord.TrimJumps
                    : at == needle.At ? 0
                    : 1;
                Split(records, TapeCommand.Jump, at, needle.At, jumps);
                records.Add(new(TapeCommand.Stitch, 0, 0));
            }
            at = needle.At;
        }
        return new(TapeLabel.Of(title, part.Letter), records.ToImmutable());
    }

    /// <summary>A move in equal pieces, as many as its length needs and at least some.</summary>
    private static void Split(
        ImmutableArray<TapeRecord>.Builder records,
        TapeCommand command,
        TapePoint from,
        TapePoint to,
        int atLeast
    )
    {
        var (u, v) = (to.U - from.U, to.V - from.V);
        var longest = Math.Max(Math.Abs(u), Math.Abs(v));
        var pieces = Math.Max(atLeast, (longest + TapeRecord.Longest - 1) / TapeRecord.Longest);
        for (var i = 1; i <= pieces; i++)
            records.Add(
                new(
                    command,
                    Share(u, i, pieces) - Share(u, i - 1, pieces),
                    Share(v, i, pieces) - Share(v, i - 1, pieces)
                )
            );
    }

    /// <summary>Rounded towards zero, so that no piece is longer than a record holds.</summary>
    private static int Share(int move, int piece, int pieces) => (int)((long)move * piece / pieces);
}
