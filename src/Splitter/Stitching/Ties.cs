using Splitter.Geometry;

namespace Splitter.Stitching;

/// <summary>
/// Fastens the thread at both ends of a path: three small stitches to and fro on the first stitch's own line before it,
/// and on the last one's after it, so that they lie under the thread that follows or went before and never show beside
/// it.
/// </summary>
internal static class Ties
{
    /// <summary>Length of a tie stitch, µm. Common practice, no source: 0.6 to 0.8 mm.</summary>
    private const int TieStitch = 700;

    /// <summary>
    /// The path as one tied block, brought to keep to <see cref="StitchRules"/> first; null when nothing is left that
    /// could be sewn.
    /// </summary>
    /// <param name="of">Id of the shape.</param>
    internal static Block? Fasten(string of, IEnumerable<Stitch> path)
    {
        var stitches = StitchRules.Sewable(path);
        if (stitches.Length < 2)
            return null;
        var (start, end) = (stitches[0].At, stitches[^1].At);
        var (first, last) = (Beside(start, stitches[1].At), Beside(end, stitches[^2].At));
        return new(of, [.. ToAndFro(first, start, first, start), .. stitches.Skip(1), .. ToAndFro(last, end, last)]);
    }

    private static IEnumerable<Stitch> ToAndFro(params IEnumerable<Point> places) =>
        places.Select(p => new Stitch(p, StitchUse.Tie));

    /// <summary>
    /// Where the tie stitch's other end lies: on the way to the neighbouring penetration, or in its hole rather than
    /// right before it.
    /// </summary>
    private static Point Beside(Point from, Point neighbour)
    {
        var length = from.DistanceTo(neighbour);
        return length < TieStitch + StitchRules.Shortest
            ? neighbour
            : from.Towards(neighbour, TieStitch / length).OnTape();
    }
}
