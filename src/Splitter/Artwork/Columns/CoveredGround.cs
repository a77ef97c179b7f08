using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>The ground between pairs of rungs, to be asked for points.</summary>
internal sealed class CoveredGround(IEnumerable<(Rung From, Rung To)> pairs)
{
    private readonly (Box Box, Rung From, Rung To)[] pieces =
    [
        .. pairs.Select(p => (Box.Around([p.From.Left, p.From.Right, p.To.Left, p.To.Right]), p.From, p.To)),
    ];

    internal bool Contains(Point point)
    {
        foreach (var (box, from, to) in pieces)
            if (
                box.Contains(point)
                && (Inside(from.Left, to.Left, to.Right, point) || Inside(from.Left, to.Right, from.Right, point))
            )
                return true;
        return false;
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
