using System.Collections.Immutable;
using Splitter.Parts;
using Splitter.Stitching;
using Splitter.Tapes;

namespace Splitter.Correcting;

/// <summary>
/// Thread that a tape leaves loose between two places may do so only over a way short enough not to be cut. A turn or a
/// stretch can make such a way longer: the machine then cuts there, and both ends have to be tied.
/// </summary>
internal static class LooseMoves
{
    /// <param name="moves">Of one step, in sewing order, as they lie now.</param>
    internal static ImmutableArray<Move> Tied(ImmutableArray<Move> moves)
    {
        var tied = moves.ToBuilder();
        for (var i = 1; i < tied.Count; i++)
        {
            var (before, after) = (tied[i - 1].Block, tied[i].Block);
            if (tied[i].Trim || TapeRecord.CanBeLoose(before.Stitches[^1].At, after.Stitches[0].At))
                continue;
            tied[i - 1] = tied[i - 1] with { Block = Tied(before, atStart: false, atEnd: !before.IsTied.End) };
            tied[i] = new(Tied(after, atStart: !after.IsTied.Start, atEnd: false), Trim: true);
        }
        return tied.ToImmutable();
    }

    private static Block Tied(Block block, bool atStart, bool atEnd) =>
        block with
        {
            Stitches = Ties.Tied(block.Stitches, atStart, atEnd),
            IsTied = (block.IsTied.Start || atStart, block.IsTied.End || atEnd),
        };
}
