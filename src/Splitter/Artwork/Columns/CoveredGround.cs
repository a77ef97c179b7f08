using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>
/// The ground between pairs of rungs, to be asked for points. Pairs follow each other along a column, so that those of
/// a stretch lie in one box: a tree of such boxes leads to the few that are near.
/// </summary>
internal sealed class CoveredGround
{
    private readonly (Rung From, Rung To)[] pieces;

    /// <summary>By height: around each piece, then around every two boxes of the level below.</summary>
    private readonly List<Box[]> levels = [];

    internal CoveredGround(IEnumerable<(Rung From, Rung To)> pairs)
    {
        pieces = [.. pairs];
        var level = Array.ConvertAll(pieces, p => Box.Around([p.From.Left, p.From.Right, p.To.Left, p.To.Right]));
        for (levels.Add(level); level.Length > 1; levels.Add(level))
            level = [.. level.Chunk(2).Select(Box.Around)];
    }

    internal bool Meets(Box box) => pieces.Length > 0 && levels[^1][0].Meets(box);

    internal bool Contains(Point point) => pieces.Length > 0 && Contains(levels.Count - 1, 0, point);

    private bool Contains(int level, int node, Point point)
    {
        if (node >= levels[level].Length || !levels[level][node].Contains(point))
            return false;
        if (level > 0)
            return Contains(level - 1, 2 * node, point) || Contains(level - 1, (2 * node) + 1, point);
        var (from, to) = pieces[node];
        return Inside(from.Left, to.Left, to.Right, point) || Inside(from.Left, to.Right, from.Right, point);
    }

    private static bool Inside(Point a, Point b, Point c, Point p)
    {
        var (ab, bc, ca) = (
            InnerTriangles.Cross(a, b, p),
            InnerTriangles.Cross(b, c, p),
            InnerTriangles.Cross(c, a, p)
        );
        return (ab >= 0 && bc >= 0 && ca >= 0) || (ab <= 0 && bc <= 0 && ca <= 0);
    }
}
