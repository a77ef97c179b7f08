using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Splitter.Cutting;
using Splitter.Cutting.Tapes;
using Splitter.Geometry;

namespace Splitter.Parts;

/// <summary>Groups of pieces that are sewn with one thread without a stop.</summary>
internal static class ThreadOrder
{
    /// <summary>
    /// A piece's stitches may lie this far outside its box, µm: half a thread, and the widest pull that is usual.
    /// </summary>
    private const int Margin = Units.Millimetre;

    /// <summary>
    /// As few groups as a beam search finds: wherever two pieces lie over each other, the drawing's order stays. A
    /// thread that is in sews all that it can, which never costs a change. Within a group the pieces keep their order
    /// here.
    /// </summary>
    /// <param name="pieceOf">What is grouped need not be stitched yet.</param>
    internal static ImmutableArray<ImmutableArray<T>> Group<T>(IEnumerable<T> sewn, Func<T, Piece> pieceOf)
    {
        ImmutableArray<T> all = [.. sewn];
        ImmutableArray<Piece> pieces = [.. all.Select(pieceOf)];
        if (pieces is [KeptPiece, ..])
            return [.. AsTheTapeHasThem(all, s => (KeptPiece)pieceOf(s))];
        var below = new List<int>[pieces.Length];
        for (var i = 0; i < pieces.Length; i++)
        {
            below[i] = [];
            for (var j = 0; j < i; j++)
                if (Touch(pieces[j], pieces[i]))
                    below[i].Add(j);
        }
        var groups = new ThreadSearch([.. pieces.Select(p => p.Shape.Thread)], below).Fewest();
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

    /// <summary>
    /// Where shapes lie over each other: asked for in each hooping that sews some of both, kept as long as they are.
    /// </summary>
    private static readonly ConditionalWeakTable<Region, ConditionalWeakTable<Region, IReadOnlyList<Box>>> Known = [];

    /// <summary>
    /// Shapes may lie over each other where neither piece is: only where both are does the order matter.
    /// </summary>
    internal static bool Touch(Piece a, Piece b)
    {
        var common = a.Bounds.Grown(Margin).Common(b.Bounds.Grown(Margin));
        var (one, other) = (a.Shape.Footprint, b.Shape.Footprint);
        return !common.IsEmpty
            && one.Bounds.Meets(common)
            && other.Bounds.Meets(common)
            && Overlaps(one, other).Any(overlap => overlap.Meets(common));
    }

    private static IReadOnlyList<Box> Overlaps(Region one, Region other) =>
        Known
            .GetValue(one, _ => [])
            .GetValue(other, _ => [.. Polygons.Intersect(one, other).Polygons.Select(p => p.Outer.Bounds)]);
}
