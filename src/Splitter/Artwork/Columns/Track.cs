using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>A column in the making: both edges point by point, and which of their points face each other.</summary>
internal sealed class Track
{
    /// <summary>
    /// An edge follows the outline from one rung to the next where that is no longer than this many times the straight
    /// way (right angles have 1.41); else another branch opens there, and the edge swings across its mouth.
    /// </summary>
    internal const double LongestDetour = 1.5;

    /// <summary>Chords of an edge across a mouth.</summary>
    private const int SwingParts = 8;

    private readonly List<Point> left = [];
    private readonly List<Point> right = [];
    private readonly List<(int Left, int Right)> rungs = [];

    private Track() { }

    internal bool Closed { get; private init; }

    /// <summary>How many rungs at the start, and at the end, were laid by rule.</summary>
    internal int LaidAtStart { get; private init; }

    internal int LaidAtEnd { get; private set; }

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
            var (first, last) = (Heading(ground, from), Heading(ground, to));
            var back = Edge(ground, to.Right, from.Right, -last, -first).AsEnumerable().Reverse();
            track.Add(Edge(ground, from.Left, to.Left, first, last).Skip(1), back.Skip(1));
        }
        return track;
    }

    /// <summary>The track over rungs that are all laid by rule.</summary>
    internal static Track Of(IEnumerable<Rung> rungs)
    {
        var track = new Track();
        foreach (var rung in rungs)
            if (track.Count == 0)
                track.Add(rung);
            else
                track.Lay(rung);
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

    /// <summary>Another rung, laid by rule rather than found on the outline: it stays as it is.</summary>
    internal void Lay(Rung rung)
    {
        Add(rung);
        LaidAtEnd++;
    }

    /// <summary>The same column walked the other way.</summary>
    internal Track Reversed()
    {
        var turned = new Track
        {
            Closed = Closed,
            LaidAtStart = LaidAtEnd,
            LaidAtEnd = LaidAtStart,
        };
        turned.left.AddRange(right.AsEnumerable().Reverse());
        turned.right.AddRange(left.AsEnumerable().Reverse());
        turned.rungs.AddRange(
            rungs.AsEnumerable().Reverse().Select(r => (right.Count - 1 - r.Right, left.Count - 1 - r.Left))
        );
        return turned;
    }

    private static Vector Heading(InnerTriangles ground, Facing step) =>
        Vector.Between(ground.Points[step.Left], ground.Points[step.Right]).Unit.Left;

    private static List<Point> Edge(InnerTriangles ground, int from, int to, Vector leaving, Vector arriving)
    {
        var (start, end) = (ground.Points[from], ground.Points[to]);
        var length = start.DistanceTo(end);
        var chain = new OutlineCorners(ground).Chain(from, to, length * LongestDetour);
        return chain is not null
            ? chain.ConvertAll(i => ground.Points[i])
            : Swing(start, end, leaving * length, arriving * length);
    }

    /// <summary>A cubic (Hermite's) with given directions at its ends: a straight line where they lie on it.</summary>
    private static List<Point> Swing(Point start, Point end, Vector leaving, Vector arriving)
    {
        var (swing, way) = (new List<Point> { start }, Vector.Between(start, end));
        for (var i = 1; i < SwingParts; i++)
        {
            var t = i / (double)SwingParts;
            var (s, u) = (t * t, 1 - t);
            swing.Add(((way * (s * (3 - (2 * t)))) + (leaving * (t * u * u)) - (arriving * (s * u))).From(start));
        }
        swing.Add(end);
        return swing;
    }
}
