using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>
/// The centre lines of a piece of ground, as chains of triangles that touch across it. A triangle with three open sides
/// is a fork, one with two a step along a branch, one with a single open side an end (chordal axis: Prasad,
/// "Morphological analysis of shapes", CNLS Newsletter 139, 1997; title from memory).
/// </summary>
internal sealed class Skeleton
{
    /// <summary>
    /// Spurs that reach no further than this many radii of the disc at their root are sampling noise.
    /// </summary>
    private const double NoiseReach = 1.15;

    /// <summary>
    /// Two corners of one straight end both go when neither reaches further than this many radii: a stroke cut off at
    /// up to about 45 degrees. One of them alone would draw the centre line aside.
    /// </summary>
    private const double SlantedEndReach = 2.7;

    /// <summary>An outline no longer than this many times its chord is straight.</summary>
    private const double Straight = 1.03;

    private readonly InnerTriangles ground;
    private readonly bool[] alive;

    internal Skeleton(InnerTriangles ground)
    {
        this.ground = ground;
        alive = new bool[ground.Count];
        Array.Fill(alive, true);
    }

    /// <summary>
    /// A stretch between two triangles that are forks or ends; the way leads from the first over the sides.
    /// </summary>
    internal sealed record Stretch(int From, int To, List<int> Sides)
    {
        internal int FirstSide => Sides[0];
    }

    /// <summary>
    /// Takes off spurs that a disc at their root nearly covers, such as those into the corners of a square end.
    /// </summary>
    /// <param name="reach">In radii of that disc, from its centre. A right-angled corner has 1.41.</param>
    internal void Prune(double reach)
    {
        while (Prune(spur => spur.Reach < NoiseReach, evenEnds: false)) { }
        while (Prune(spur => spur.Reach < reach, evenEnds: true)) { }
    }

    /// <summary>Every stretch once, and every loop without a fork; in the order of triangles.</summary>
    internal List<Stretch> Stretches()
    {
        var (found, passed) = (new List<Stretch>(), new bool[ground.Count]);
        for (var t = 0; t < ground.Count; t++)
        {
            if (!alive[t] || Degree(t) == 2)
                continue;
            passed[t] = true;
            foreach (var side in OpenSides(t))
            {
                var way = Walk(side);
                foreach (var between in way.Sides.Skip(1))
                    passed[between / 3] = true;
                // Found from both ends: kept from the smaller.
                if (side <= ground.Across[way.Sides[^1]])
                    found.Add(way);
            }
        }
        for (var t = 0; t < ground.Count; t++)
        {
            if (!alive[t] || passed[t])
                continue;
            var way = Walk(OpenSides(t).First());
            foreach (var side in way.Sides)
                passed[side / 3] = true;
            found.Add(way);
        }
        return found;
    }

    /// <summary>The diameter of the largest disc at a fork or between facing points, µm.</summary>
    internal double Widest => Enumerable.Range(0, ground.Count).Max(t => 2 * Disc(t).Radius);

    internal bool IsFork(int triangle) => Degree(triangle) == 3;

    /// <summary>The centre and radius of the disc through a triangle's corners; a flat one's is kept on it.</summary>
    internal (Point Centre, double Radius) Disc(int triangle)
    {
        var (a, b, c) = Corners(triangle);
        var (ab, ac) = (Vector.Between(a, b), Vector.Between(a, c));
        var twice = 2 * Vector.Cross(ab, ac);
        var (bb, cc) = (Vector.Dot(ab, ab), Vector.Dot(ac, ac));
        var centre = new Vector(((ac.Y * bb) - (ab.Y * cc)) / twice, ((ab.X * cc) - (ac.X * bb)) / twice);
        var longest = Math.Max(Math.Max(ab.Length, ac.Length), b.DistanceTo(c));
        return centre.Length < 2 * longest
            ? (centre.From(a), centre.Length)
            : (new Vector((ab.X + ac.X) / 3, (ab.Y + ac.Y) / 3).From(a), longest / 2);
    }

    /// <summary>The facing points over a stretch, walking along it.</summary>
    internal List<Facing> Steps(Stretch stretch) =>
        stretch.Sides.ConvertAll(side =>
        {
            // The triangle that is left lies on the right of its side, so one walks out with the side's start on the
            // left.
            return new Facing(ground.Corners[side], ground.Corners[InnerTriangles.NextSide(side)]);
        });

    /// <summary>
    /// Length over a stretch from the centre of its first triangle to that of its last, or to its tip.
    /// </summary>
    internal double Length(Stretch stretch)
    {
        var at = Disc(stretch.From).Centre;
        double sum = 0;
        foreach (var step in Steps(stretch))
        {
            var middle = ground.Points[step.Left].Towards(ground.Points[step.Right], 0.5);
            sum += at.DistanceTo(middle);
            at = middle;
        }
        return sum
            + at.DistanceTo(Degree(stretch.To) == 1 && IsTip(stretch.To) ? Tip(stretch) : Disc(stretch.To).Centre);
    }

    private sealed record Spur(Stretch Stretch, double Reach, double Length);

    private bool Prune(Func<Spur, bool> isDoomed, bool evenEnds)
    {
        var doomed = new List<Spur>();
        var ends = Stretches().Where(s => Degree(s.From) == 1 || Degree(s.To) == 1).Select(FromRoot);
        foreach (var root in ends.Where(s => IsFork(s.From)).GroupBy(s => s.From))
        {
            var spurs = root.Select(Measure).ToList();
            var going = spurs.Where(isDoomed).ToHashSet();
            if (evenEnds)
                foreach (var (a, b) in spurs.SelectMany(a => spurs.Select(b => (a, b))).Where(p => IsEvenEnd(p.a, p.b)))
                    going.UnionWith([a, b]);
            // A blob that is all short spurs keeps its longest line.
            if (going.Count == 3)
                going.Remove(spurs.OrderBy(s => s.Length).ThenBy(s => s.Stretch.FirstSide).Last());
            doomed.AddRange(going);
        }
        foreach (var spur in doomed)
        {
            foreach (var side in spur.Stretch.Sides)
                alive[ground.Across[side] / 3] = false;
        }
        return doomed.Count > 0;
    }

    private Stretch FromRoot(Stretch stretch) =>
        Degree(stretch.From) == 1 && Degree(stretch.To) != 1 ? Turned(stretch) : stretch;

    private Stretch Turned(Stretch stretch) =>
        new(stretch.To, stretch.From, [.. stretch.Sides.AsEnumerable().Reverse().Select(s => ground.Across[s])]);

    /// <summary>
    /// A spur's reach is the furthest that it gets from its root, not its length: into a round end, whose points all
    /// lie on one circle, it may wander.
    /// </summary>
    private Spur Measure(Stretch stretch)
    {
        var (centre, radius) = Disc(stretch.From);
        var furthest = IsTip(stretch.To)
            ? centre.DistanceTo(Tip(stretch))
            : centre.DistanceTo(Disc(stretch.To).Centre) + Disc(stretch.To).Radius;
        foreach (var step in Steps(stretch))
            furthest = Math.Max(
                furthest,
                centre.DistanceTo(ground.Points[step.Left].Towards(ground.Points[step.Right], 0.5))
            );
        return new(stretch, furthest / radius, Length(stretch));
    }

    private bool IsEvenEnd(Spur a, Spur b)
    {
        if (a.Reach > SlantedEndReach || b.Reach > SlantedEndReach || !IsTip(a.Stretch.To) || !IsTip(b.Stretch.To))
            return false;
        var (from, to) = (TipIndex(a.Stretch), TipIndex(b.Stretch));
        var (chord, length) = (ground.Points[from].DistanceTo(ground.Points[to]), 0.0);
        for (var at = from; at != to && length <= chord * Straight; at = ground.Next[at])
            length += ground.Points[at].DistanceTo(ground.Points[ground.Next[at]]);
        return length <= chord * Straight && from != to;
    }

    /// <summary>An end that touches the outline with all but its open side.</summary>
    private bool IsTip(int triangle)
    {
        var outline = 0;
        for (var side = triangle * 3; side < (triangle * 3) + 3; side++)
            outline += ground.Across[side] < 0 ? 1 : 0;
        return outline == 2;
    }

    private int TipIndex(Stretch stretch)
    {
        var entered = ground.Across[stretch.Sides[^1]];
        return ground.Corners[InnerTriangles.NextSide(InnerTriangles.NextSide(entered))];
    }

    private Point Tip(Stretch stretch) => ground.Points[TipIndex(stretch)];

    private (Point A, Point B, Point C) Corners(int triangle) =>
        (
            ground.Points[ground.Corners[triangle * 3]],
            ground.Points[ground.Corners[(triangle * 3) + 1]],
            ground.Points[ground.Corners[(triangle * 3) + 2]]
        );

    private IEnumerable<int> OpenSides(int triangle)
    {
        for (var side = triangle * 3; side < (triangle * 3) + 3; side++)
            if (IsOpen(side))
                yield return side;
    }

    private int Degree(int triangle)
    {
        var degree = 0;
        for (var side = triangle * 3; side < (triangle * 3) + 3; side++)
            degree += IsOpen(side) ? 1 : 0;
        return degree;
    }

    private bool IsOpen(int side) => ground.Across[side] >= 0 && alive[ground.Across[side] / 3];

    private Stretch Walk(int first)
    {
        var sides = new List<int> { first };
        while (true)
        {
            var entered = ground.Across[sides[^1]];
            var triangle = entered / 3;
            if (Degree(triangle) != 2)
                return new(first / 3, triangle, sides);
            var on = OpenSides(triangle).First(s => s != entered);
            if (on == first)
                return new(first / 3, first / 3, sides);
            sides.Add(on);
        }
    }
}
