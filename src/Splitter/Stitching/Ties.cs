using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching;

/// <summary>
/// Fastens the thread at both ends of a path. The needle comes in a short stitch along the path, sews one on and two back
/// to where the path begins, and then the path over them; at the end two back along the path and one to. Ties lie on the
/// path's own stitches, under the thread that follows or went before, and never show beside it; their holes are spread.
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
        var (one, two) = Along([.. stitches.Take(3).Select(s => s.At)]);
        var (last, before) = Along([.. stitches.Reverse().Take(3).Select(s => s.At)]);
        return new(of, [.. Tied(one, two, one, start), .. stitches.Skip(1), .. Tied(last, before, last)]);
    }

    private static IEnumerable<Stitch> Tied(params IEnumerable<Point> places) =>
        places.Select(p => new Stitch(p, StitchUse.Tie));

    /// <summary>Two places along a path from its end, each a tie stitch on, or in a hole rather than right before it.</summary>
    private static (Point One, Point Two) Along(ImmutableArray<Point> path)
    {
        var one = Beside(path[0], path[1], TieStitch);
        var two =
            one != path[1] ? Beside(path[0], path[1], 2 * TieStitch)
            : path.Length > 2 ? Beside(path[1], path[2], TieStitch)
            : path[0];
        return (one, two);
    }

    private static Point Beside(Point from, Point hole, int away)
    {
        var length = from.DistanceTo(hole);
        return length < away + StitchRules.Shortest ? hole : from.Towards(hole, away / length).OnTape();
    }
}
