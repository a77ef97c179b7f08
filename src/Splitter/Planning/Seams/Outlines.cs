using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>Ways along the edges of fills and satins, for seams that follow them.</summary>
internal sealed class Outlines
{
    /// <summary>
    /// How far outside an edge a seam follows it, µm: half a thread. On the edge itself it would cut a line that is
    /// sewn along the edge lengthwise, again and again; beside it the line lies on one side.
    /// </summary>
    internal const int Beside = 200;

    /// <summary>
    /// The largest share of a segment: at 1 a place would count as the next segment's, which the last one does not
    /// have. The difference is less than a micrometre on segments up to a metre.
    /// </summary>
    private const double LastShare = 0.999999;

    /// <summary>All drafts of a drawing have the same; kept as long as the drawing is.</summary>
    private static readonly ConditionalWeakTable<Drawing, Outlines> Known = [];

    private readonly SegmentBins<(int Ring, int Segment)> bins = new();
    private readonly List<(int Shape, ImmutableArray<Point> Points)> rings = [];

    private Outlines(Drawing drawing)
    {
        for (var shape = 0; shape < drawing.Shapes.Length; shape++)
        {
            if (drawing.Shapes[shape] is RunShape)
                continue;
            foreach (var ring in drawing.Shapes[shape].Footprint.Polygons.SelectMany(Around))
            {
                for (var i = 0; i < ring.Points.Length; i++)
                    bins.Add(ring.Points[i], ring.Points[(i + 1) % ring.Points.Length], (rings.Count, i));
                rings.Add((shape, ring.Points));
            }
        }
    }

    internal static Outlines Of(Drawing drawing) => Known.GetValue(drawing, key => new(key));

    /// <summary>
    /// Ring by ring, since the engine compares each of thousands with all others; rings that grow into each other stay
    /// apart.
    /// </summary>
    private static IEnumerable<Ring> Around(Polygon polygon) =>
        polygon.Holes.SelectMany(hole => Grown(hole, -Beside)).Concat(Grown(polygon.Outer, Beside));

    private static IEnumerable<Ring> Grown(Ring ring, int by) => Polygons.Offset(new([new(ring, [])]), by).Rings;

    /// <summary>
    /// A place on an outline: on which ring, and where along it (whole part: segment; fraction: share of it).
    /// </summary>
    internal readonly record struct Place(int Ring, double Along, Point At);

    /// <summary>The nearest place on a shape's outline, if one is near enough (µm).</summary>
    internal Place? Nearest(int shape, Point p, int within)
    {
        Place? best = null;
        var nearest = (double)within;
        foreach (var (a, b, (ring, segment)) in bins.Near(new Box(p.X, p.Y, p.X, p.Y).Grown(within)))
        {
            if (rings[ring].Shape != shape)
                continue;
            var (edge, to) = (Vector.Between(a, b), Vector.Between(a, p));
            var share = Math.Clamp(Vector.Dot(edge, to) / Vector.Dot(edge, edge), 0, 1);
            var at = a.Towards(b, share);
            if (at.DistanceTo(p) < nearest)
                (nearest, best) = (at.DistanceTo(p), new Place(ring, segment + Math.Min(share, LastShare), at));
        }
        return best;
    }

    /// <summary>The vertices of a ring between two places on it, the shorter way, both ends included.</summary>
    internal List<Point> Between(Place from, Place to)
    {
        var (there, back) = (Forward(from, to), Forward(to, from));
        if (Length(there) <= Length(back))
            return there;
        back.Reverse();
        return back;
    }

    internal static double Length(List<Point> points)
    {
        var sum = 0.0;
        for (var i = 1; i < points.Count; i++)
            sum += points[i - 1].DistanceTo(points[i]);
        return sum;
    }

    private List<Point> Forward(Place from, Place to)
    {
        var ring = rings[from.Ring].Points;
        var path = new List<Point> { from.At };
        var (first, last) = ((int)from.Along, (int)to.Along);
        var steps = last - first;
        if (steps < 0 || (steps == 0 && to.Along < from.Along))
            steps += ring.Length;
        for (var k = 1; k <= steps; k++)
            path.Add(ring[(first + k) % ring.Length]);
        path.Add(to.At);
        return path;
    }
}
