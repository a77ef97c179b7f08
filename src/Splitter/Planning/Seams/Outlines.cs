using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// Ways along the edges of fills and satins, for seams that follow them. Those of a shape are worked out when a seam
/// first comes near it: of thousands of shapes few lie at a seam.
/// </summary>
internal sealed class Outlines
{
    /// <summary>
    /// How far outside an edge a seam follows it, µm: half a thread. On the edge itself it would cut a line that is
    /// sewn along the edge lengthwise, again and again; beside it the line lies on one side.
    /// </summary>
    internal const int Beside = 200;

    /// <summary>A seam follows no finer detail of an outline than this where that is very fine, µm.</summary>
    private const double Detail = Beside / 4;

    /// <summary>
    /// The largest share of a segment: at 1 a place would count as the next segment's, which the last one does not
    /// have. The difference is less than a micrometre on segments up to a metre.
    /// </summary>
    private const double LastShare = 0.999999;

    /// <summary>All drafts of a drawing have the same; kept as long as the drawing is.</summary>
    private static readonly ConditionalWeakTable<Drawing, Outlines> Known = [];

    private readonly Lazy<ShapeOutlines>[] shapes;

    private Outlines(Drawing drawing) =>
        shapes = [.. drawing.Shapes.Select(shape => new Lazy<ShapeOutlines>(() => new(shape)))];

    internal static Outlines Of(Drawing drawing) => Known.GetValue(drawing, key => new(key));

    /// <summary>A ring of an outline.</summary>
    internal sealed class Edge(ImmutableArray<Point> points)
    {
        internal ImmutableArray<Point> Points { get; } = points;
    }

    /// <summary>
    /// A place on an outline: on which ring, if on any, and where along it (whole part: segment; fraction: of it).
    /// </summary>
    internal readonly record struct Place(Edge? Ring, double Along, Point At);

    /// <summary>The nearest place on a shape's outline, if one is near enough (µm).</summary>
    internal Place? Nearest(int shape, Point p, int within) => shapes[shape].Value.Nearest(p, within);

    /// <summary>The vertices of a ring between two places on it, the shorter way, both ends included.</summary>
    internal static List<Point> Between(Edge ring, Place from, Place to)
    {
        var (there, back) = (Forward(ring, from, to), Forward(ring, to, from));
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

    private static List<Point> Forward(Edge ring, Place from, Place to)
    {
        var points = ring.Points;
        var path = new List<Point> { from.At };
        var (first, last) = ((int)from.Along, (int)to.Along);
        var steps = last - first;
        if (steps < 0 || (steps == 0 && to.Along < from.Along))
            steps += points.Length;
        for (var k = 1; k <= steps; k++)
            path.Add(points[(first + k) % points.Length]);
        path.Add(to.At);
        return path;
    }

    private sealed class ShapeOutlines
    {
        private readonly SegmentBins<(Edge Ring, int Segment)> bins = new();

        internal ShapeOutlines(Shape shape)
        {
            foreach (var ring in shape.Footprint.Polygons.SelectMany(Around))
            {
                var (points, edge) = (ring.Points, new Edge(ring.Points));
                for (var i = 0; i < points.Length; i++)
                    bins.Add(points[i], points[(i + 1) % points.Length], (edge, i));
            }
        }

        internal Place? Nearest(Point p, int within)
        {
            Place? best = null;
            var nearest = (double)within;
            foreach (var (a, b, (ring, segment)) in bins.Near(new Box(p.X, p.Y, p.X, p.Y).Grown(within)))
            {
                var (edge, to) = (Vector.Between(a, b), Vector.Between(a, p));
                var share = Math.Clamp(Vector.Dot(edge, to) / Vector.Dot(edge, edge), 0, 1);
                var at = a.Towards(b, share);
                if (at.DistanceTo(p) < nearest)
                    (nearest, best) = (at.DistanceTo(p), new Place(ring, segment + Math.Min(share, LastShare), at));
            }
            return best;
        }

        /// <summary>
        /// Ring by ring, since the engine compares each of thousands with all others; rings that grow into each other
        /// stay apart.
        /// </summary>
        private static IEnumerable<Ring> Around(Polygon polygon) =>
            polygon.Holes.SelectMany(hole => Grown(hole, -Beside)).Concat(Grown(polygon.Outer, Beside));

        private static IEnumerable<Ring> Grown(Ring ring, int by) =>
            Polygons.Offset(FineOutlines.Thinned(new([new(ring, [])]), Detail), by).Rings;
    }
}
