using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;

namespace Splitter.Parts;

/// <summary>
/// The order of the blocks that one thread sews without a stop, and where the needle comes to each, so that jumps are
/// few and short: the nearest next, bettered by <see cref="JumpSearch"/>.
/// </summary>
internal static class JumpOrder
{
    /// <summary>Whether the thread is cut before a move.</summary>
    internal static bool IsTrimmed(Point from, Point to) => from.DistanceTo(to) > JumpEnd.LongestUntrimmed;

    /// <inheritdoc cref="JumpEnd.Cost"/>
    internal static double Cost(Point from, Point to) => JumpEnd.Cost(JumpEnd.At(from), JumpEnd.At(to));

    /// <summary>The blocks in sewing order, runs turned as it suits.</summary>
    /// <param name="pieces">The blocks of each piece; those of one piece may be sewn in any order.</param>
    /// <param name="below">For each piece those before it that it lies over and stays after.</param>
    /// <param name="needle">Where it comes from.</param>
    internal static ImmutableArray<Block> Of(ImmutableArray<ImmutableArray<Block>> pieces, int[][] below, Point? needle)
    {
        var blocks = pieces.SelectMany((piece, i) => piece.Select(block => (Piece: i, Block: block))).ToArray();
        if (blocks.Length == 1 && blocks[0].Block.Line.IsEmpty)
            return [blocks[0].Block];
        var stays = blocks.Select(b => new Stay(b.Block, b.Piece)).ToArray();
        var search = new JumpSearch(NearestNext(stays, below, needle), below, needle);
        search.Better();
        return [.. search.Order.Select(s => s.Sewn())];
    }

    private static Stay[] NearestNext(Stay[] stays, int[][] below, Point? needle)
    {
        var waiting = new Waiting(stays, below);
        var order = new Stay[stays.Length];
        for (var i = 0; i < order.Length; i++)
        {
            order[i] = stays[waiting.TakeNext(needle)];
            if (needle is { } at)
                order[i].TurnTo(at);
            needle = order[i].Exit;
        }
        return order;
    }
}
