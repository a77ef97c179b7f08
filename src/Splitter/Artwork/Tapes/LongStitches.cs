using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Tapes;

/// <summary>
/// A record reaches 12.1 mm at most: a tape has a longer stitch as jumps and then a stitch, just as it has a move that
/// leaves the thread lying loose. To and fro across a column it is a stitch.
/// </summary>
internal static class LongStitches
{
    /// <summary>
    /// Stitches across a column are this share as long at least as those beside them: a way to the next of several
    /// motifs has none beside it that goes back as far. By eye, no source.
    /// </summary>
    private const double AsLong = 0.5;

    /// <param name="holes">Of a thread that is not cut.</param>
    /// <param name="moved">Numbers, rising, of holes that the needle comes to over jumps.</param>
    /// <returns>Those of them that end moves; the others end stitches.</returns>
    internal static ImmutableArray<int> Moves(ImmutableArray<Point> holes, ImmutableArray<int> moved)
    {
        if (moved.IsEmpty)
            return moved;
        var stitches = (
            from phase in Phase.Of(holes, 0)
            from i in Enumerable.Range(0, phase.Passes.Length)
            where GoesBackAsFar(phase.Passes, i)
            let pass = phase.Passes[i]
            from hole in Enumerable.Range(pass.From + 1, pass.To - pass.From)
            where pass.IsMostly(holes[hole - 1].DistanceTo(holes[hole]))
            select hole
        ).ToHashSet();
        return moved.RemoveAll(stitches.Contains);
    }

    private static bool GoesBackAsFar(ImmutableArray<Pass> passes, int at)
    {
        var least = AsLong * passes[at].Way.Length;
        return (at == 0 || passes[at - 1].Way.Length >= least)
            && (at == passes.Length - 1 || passes[at + 1].Way.Length >= least);
    }
}
