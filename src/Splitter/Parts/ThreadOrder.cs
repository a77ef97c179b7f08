using System.Collections.Immutable;
using Splitter.Cutting;
using Splitter.Cutting.Tapes;

namespace Splitter.Parts;

/// <summary>Groups of pieces that are sewn with one thread without a stop.</summary>
internal static class ThreadOrder
{
    /// <summary>
    /// As few groups as a beam search finds: wherever two pieces lie over each other, the drawing's order stays. A
    /// thread that is in sews all that it can, which never costs a change. Within a group the pieces keep their order
    /// here.
    /// </summary>
    /// <param name="overlaps">Of the drawing's shapes.</param>
    /// <param name="pieceOf">What is grouped need not be stitched yet.</param>
    internal static ImmutableArray<ImmutableArray<T>> Group<T>(
        IEnumerable<T> sewn,
        ShapeOverlaps overlaps,
        Func<T, Piece> pieceOf
    )
    {
        ImmutableArray<T> all = [.. sewn];
        ImmutableArray<Piece> pieces = [.. all.Select(pieceOf)];
        if (pieces is [KeptPiece, ..])
            return [.. AsTheTapeHasThem(all, s => (KeptPiece)pieceOf(s))];
        var groups = new ThreadSearch([.. pieces.Select(p => p.Shape.Thread)], overlaps.Below(pieces)).Fewest();
        return [.. groups.Select(g => g.Select(i => all[i]).ToImmutableArray())];
    }

    /// <summary>
    /// A tape's order was somebody's work, and so were its stops: those between blocks of one thread stay, those for a
    /// thread that this hooping does not need are left out.
    /// </summary>
    private static IEnumerable<ImmutableArray<T>> AsTheTapeHasThem<T>(ImmutableArray<T> all, Func<T, KeptPiece> pieceOf)
    {
        for (int from = 0, to; from < all.Length; from = to)
        {
            var first = pieceOf(all[from]);
            for (to = from + 1; to < all.Length && pieceOf(all[to]).IsSewnOnFrom(first); )
                to++;
            yield return all[from..to];
        }
    }
}
