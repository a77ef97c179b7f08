using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>Corners of an outline that a person would see, however finely they are drawn.</summary>
internal sealed class OutlineCorners(InnerTriangles ground)
{
    /// <summary>
    /// How far the outline turns at a point, looked at from a distance (µm) on both sides; positive where the ground is
    /// convex.
    /// </summary>
    internal double Turn(int point, double reach)
    {
        var before = Vector.Between(Away(point, ground.Previous, reach), ground.Points[point]);
        var after = Vector.Between(ground.Points[point], Away(point, ground.Next, reach));
        return Math.Atan2(Vector.Cross(before, after), Vector.Dot(before, after));
    }

    /// <summary>
    /// The points of a chain where the outline turns outwards by more than a bound, the sharpest of each cluster.
    /// </summary>
    internal List<int> Along(List<int> chain, double reach, double bound)
    {
        var corners = new List<int>();
        foreach (var point in chain.Where(p => Turn(p, reach) >= bound))
        {
            if (corners.Count == 0 || ground.Points[corners[^1]].DistanceTo(ground.Points[point]) > 2 * reach)
                corners.Add(point);
            else if (Turn(point, reach) > Turn(corners[^1], reach) + 1e-9)
                corners[^1] = point;
        }
        return corners;
    }

    /// <summary>
    /// The outline's points from one to another with the ground on the right; null when longer than a bound (µm).
    /// </summary>
    internal List<int>? Chain(int from, int to, double longest)
    {
        var (chain, length) = (new List<int> { from }, 0.0);
        while (chain[^1] != to)
        {
            var next = ground.Next[chain[^1]];
            length += ground.Points[chain[^1]].DistanceTo(ground.Points[next]);
            if (length > longest || next == from)
                return null;
            chain.Add(next);
        }
        return chain;
    }

    private Point Away(int point, IReadOnlyList<int> step, double reach)
    {
        var at = point;
        for (double gone = 0; gone < reach && step[at] != point; at = step[at])
            gone += ground.Points[at].DistanceTo(ground.Points[step[at]]);
        return ground.Points[at];
    }
}
