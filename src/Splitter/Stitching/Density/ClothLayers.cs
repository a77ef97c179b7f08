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
    /// <param name="jobs">How many threads may work.</param>
    internal static ThreadGrid Of(ImmutableArray<SewnPiece> sewn, int jobs = 1) =>
        Counted(
            sewn,
            jobs,
            (grid, pieces) =>
            {
                Lay(grid, pieces);
                Pierce(grid, pieces);
            }
        );

    /// <summary>Thread alone.</summary>
    internal static ThreadGrid ThreadOf(ImmutableArray<SewnPiece> sewn, int jobs) => Counted(sewn, jobs, Lay);

    /// <summary>Needle holes alone.</summary>
    internal static ThreadGrid HolesOf(ImmutableArray<SewnPiece> sewn, int jobs) => Counted(sewn, jobs, Pierce);

    /// <summary>The pieces of each hooping, in their order.</summary>
    internal static ImmutableArray<ImmutableArray<SewnPiece>> ByHooping(ImmutableArray<SewnPiece> sewn) =>
        [.. sewn.GroupBy(s => s.Piece.Hooping).Select(hooping => hooping.ToImmutableArray())];

    /// <summary>Every stitch with the strip of cloth that it counts for, µm.</summary>
    internal static IEnumerable<(Piece Piece, Point From, Stitch To, int Breadth)> Threads(
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
                    to,
                    // What a tape's stitches are for is a guess: all of its thread counts by mass.
                    piece is KeptPiece
                        ? ThreadGrid.ThreadWidth
                        : Breadth(to.Use)
                );
            }
    }

    /// <summary>Lays all thread of a block, or takes it out again.</summary>
    internal static void Lay(ThreadGrid grid, Block block, int sign)
    {
        for (var i = 1; i < block.Stitches.Length; i++)
            grid.Lay(block.Stitches[i - 1].At, block.Stitches[i].At, sign * Breadth(block.Stitches[i].Use));
    }

    /// <summary>Quarters with thread of a tape that more than one part sews.</summary>
    internal static HashSet<Quarter> Overlaps(ImmutableArray<SewnPiece> sewn)
    {
        var quarters = new HashSet<Quarter>();
        foreach (var block in sewn.SelectMany(s => s.Blocks))
            for (var i = 1; i < block.Stitches.Length; i++)
                if (block.Stitches[i].Source == StitchSource.Repeated)
                    foreach (var (quarter, _) in new CrossedQuarters(block.Stitches[i - 1].At, block.Stitches[i].At))
                        quarters.Add(quarter);
        return quarters;
    }

    /// <summary>Where several threads work each hooping is counted on a grid of its own, which is then added.</summary>
    private static ThreadGrid Counted(
        ImmutableArray<SewnPiece> sewn,
        int jobs,
        Action<ThreadGrid, ImmutableArray<SewnPiece>> count
    )
    {
        var all = new ThreadGrid(GroundOf(sewn));
        InOrder.Select(
            ByHooping(sewn),
            jobs,
            pieces =>
            {
                if (jobs == 1)
                {
                    count(all, pieces);
                    return all;
                }
                var grid = new ThreadGrid(GroundOf(pieces));
                count(grid, pieces);
                // Whole numbers: whichever comes first, the sums are the same.
                lock (all)
                    all.Add(grid);
                return all;
            }
        );
        return all;
    }

    private static Box GroundOf(ImmutableArray<SewnPiece> sewn) =>
        Box.Around(sewn.SelectMany(s => s.Blocks).Select(b => b.Bounds));

    private static void Lay(ThreadGrid grid, ImmutableArray<SewnPiece> sewn)
    {
        foreach (var thread in Threads(sewn))
            grid.Lay(thread.From, thread.To.At, thread.Breadth);
    }

    /// <param name="sewn">Of one hooping.</param>
    private static void Pierce(ThreadGrid grid, ImmutableArray<SewnPiece> sewn)
    {
        (int Thread, Point At)? needle = null;
        foreach (var (piece, blocks) in sewn)
        foreach (var block in blocks)
        {
            // Where the thread goes on from one block to the next, the needle is in that hole already.
            var isGoingOn = needle == (piece.Shape.Thread, block.Start);
            foreach (var stitch in block.Stitches.AsSpan()[(isGoingOn ? 1 : 0)..])
                grid.Pierce(stitch.At);
            needle = (piece.Shape.Thread, block.End);
        }
    }

    /// <summary>
    /// One layer is what covers the cloth once: a fill whose rows lie a thread's width apart, or a column with as much
    /// between its penetrations along an edge, which is how both are usually sewn. A column's thread goes out and back
    /// for each of these, so that it counts for half of its width; all other thread counts for what it covers. Sewn
    /// twice as densely, either is two layers. That a column is one layer and not two is how the trade counts
    /// (common practice, no source): a limit of three bears a column on the edges of two fills.
    /// </summary>
    internal static int Breadth(StitchUse use) =>
        use == StitchUse.Satin ? ThreadGrid.ThreadWidth / 2 : ThreadGrid.ThreadWidth;
}
