using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>A column in the making: both edges point by point, and which of their points face each other.</summary>
internal sealed class Track
{
    /// <summary>
    /// An edge follows the outline from one rung to the next where that is no longer than this many times the straight
    /// way (right angles have 1.41); else another branch opens there, and the edge runs straight across its mouth.
    /// </summary>
    private const double LongestDetour = 1.5;

    private readonly List<Point> left = [];
    private readonly List<Point> right = [];
    private readonly List<(int Left, int Right)> rungs = [];

    private Track() { }

    internal bool Closed { get; private init; }

    internal IReadOnlyList<Point> Left => left;

    internal IReadOnlyList<Point> Right => right;

    /// <summary>Indices into both edges, ascending.</summary>
    internal IReadOnlyList<(int Left, int Right)> Rungs => rungs;

    internal int Count => rungs.Count;

    internal Rung this[int i] => new(left[rungs[i].Left], right[rungs[i].Right]);

    internal Rung Last => this[^1];

    /// <summary>Length of the line through the middles, µm.</summary>
    internal double Length => Enumerable.Range(1, Count - 1).Sum(i => this[i - 1].Middle.DistanceTo(this[i].Middle));

    /// <summary>The track over facing points of an outline; a closed one returns to its first.</summary>
    internal static Track Over(InnerTriangles ground, IReadOnlyList<Facing> steps, bool closed)
    {
        var track = new Track { Closed = closed };
        track.Add([ground.Points[steps[0].Left]], [ground.Points[steps[0].Right]]);
        for (var i = 1; i < (closed ? steps.Count + 1 : steps.Count); i++)
        {
            var (from, to) = (steps[i - 1], steps[i % steps.Count]);
            var back = Edge(ground, to.Right, from.Right).AsEnumerable().Reverse();
            track.Add(Edge(ground, from.Left, to.Left).Skip(1), back.Skip(1));
        }
        return track;
    }

    /// <summary>Another rung, at the ends of the ways that both edges take to it; either may be empty.</summary>
    internal void Add(IEnumerable<Point> leftWay, IEnumerable<Point> rightWay)
    {
        left.AddRange(leftWay);
        right.AddRange(rightWay);
        if (rungs.Count == 0 || rungs[^1] != (left.Count - 1, right.Count - 1))
            rungs.Add((left.Count - 1, right.Count - 1));
    }

    internal void Add(Rung rung) => Add([rung.Left], [rung.Right]);

    /// <summary>The same column walked the other way.</summary>
    internal Track Reversed()
    {
        var turned = new Track { Closed = Closed };
        turned.left.AddRange(right.AsEnumerable().Reverse());
        turned.right.AddRange(left.AsEnumerable().Reverse());
        turned.rungs.AddRange(
            rungs.AsEnumerable().Reverse().Select(r => (right.Count - 1 - r.Right, left.Count - 1 - r.Left))
        );
        return turned;
    }

    private static List<Point> Edge(InnerTriangles ground, int from, int to)
    {
        var straight = ground.Points[from].DistanceTo(ground.Points[to]);
        var chain = new OutlineCorners(ground).Chain(from, to, straight * LongestDetour) ?? [from, to];
        return chain.ConvertAll(i => ground.Points[i]);
    }
}
