using System.Collections.Immutable;
using Splitter.Cutting;
using Splitter.Cutting.Tapes;
using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>
/// What lies on each square millimetre of the finished cloth, all parts over each other: layers of thread and needle
/// holes. Marks are left out, since they come out.
/// </summary>
internal static class ClothLayers
{
    internal static ThreadGrid Of(ImmutableArray<SewnPiece> sewn)
    {
        var grid = new ThreadGrid(
            Box.Around(sewn.SelectMany(s => s.Blocks).SelectMany(b => b.Stitches).Select(s => s.At))
        );
        (int Hooping, int Thread, Point At)? needle = null;
        foreach (var (piece, blocks) in sewn)
        foreach (var block in blocks)
        {
            // Where the thread goes on from one block to the next, the needle is in that hole already.
            var isGoingOn = needle == (piece.Hooping, piece.Shape.Thread, block.Start);
            foreach (var stitch in block.Stitches.Skip(isGoingOn ? 1 : 0))
                grid.Pierce(stitch.At);
            needle = (piece.Hooping, piece.Shape.Thread, block.End);
        }
        foreach (var thread in Threads(sewn))
            grid.Lay(thread.From, thread.To, thread.Breadth);
        return grid;
    }

    /// <summary>Every stitch with the strip of cloth that it counts for, µm.</summary>
    internal static IEnumerable<(Piece Piece, Point From, Point To, int Breadth)> Threads(
        ImmutableArray<SewnPiece> sewn
    )
    {
        foreach (var (piece, blocks) in sewn)
        foreach (var block in blocks)
            for (var i = 1; i < block.Stitches.Length; i++)
            {
                var (from, to) = (block.Stitches[i - 1], block.Stitches[i]);
                yield return (
                    piece,
                    from.At,
                    to.At,
                    // What a tape's stitches are for is a guess: all of its thread counts by mass.
                    piece is KeptPiece
                        ? ThreadGrid.ThreadWidth
                        : Breadth(to.Use)
                );
            }
    }

    /// <summary>Squares with thread of a tape that more than one part sews.</summary>
    internal static HashSet<Square> Overlaps(ImmutableArray<SewnPiece> sewn) =>
        [
            .. from piece in sewn
            from block in piece.Blocks
            from i in Enumerable.Range(1, block.Stitches.Length - 1)
            where block.Stitches[i].Source == StitchSource.Repeated
            from crossed in ThreadGrid.Crossed(block.Stitches[i - 1].At, block.Stitches[i].At)
            select crossed.Square,
        ];

    /// <summary>
    /// One layer is what covers the cloth once: a fill whose rows lie a thread's width apart, or a column with as much
    /// between its penetrations along an edge, which is how both are usually sewn. A column's thread goes out and back
    /// for each of these, so that it counts for half of its width; all other thread counts for what it covers. Sewn
    /// twice as densely, either is two layers. That a column is one layer and not two is how the trade counts
    /// (common practice, no source): a limit of three bears a column on the edges of two fills.
    /// </summary>
    private static int Breadth(StitchUse use) =>
        use == StitchUse.Satin ? ThreadGrid.ThreadWidth / 2 : ThreadGrid.ThreadWidth;
}
