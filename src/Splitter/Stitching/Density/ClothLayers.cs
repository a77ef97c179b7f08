using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Cutting.Tapes;
using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>
/// What lies on each square millimetre of the finished cloth, all parts over each other: covering layers and needle
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

    /// <summary>Every stitch with the strip of cloth that it covers, µm.</summary>
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
                        : Breadth(to.Use, piece.Shape.Style)
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
    /// So that one fill, one satin column and one pass of a run are one layer each: a thread stands for the cloth up to
    /// its neighbour, which is what a layer of its kind lays. Underlay, travel and ties cover their own width alone.
    /// </summary>
    private static int Breadth(StitchUse use, SewStyle style) =>
        use switch
        {
            StitchUse.Fill => style.RowSpacing,
            // To and fro once for each spacing.
            StitchUse.Satin => style.RowSpacing / 2,
            // A run has no neighbour: where it goes once, needle and cloth meet one layer.
            StitchUse.Run => Square.Side,
            _ => ThreadGrid.ThreadWidth,
        };
}
