using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;

namespace Splitter.Geometry;

/// <summary>
/// Divides open paths by regions. An overlay would return the stretches unordered and break them wherever a path
/// crosses itself; here each segment is split where it meets the outline, and the pieces keep the path's direction.
/// </summary>
internal sealed class PathClipping
{
    /// <summary>
    /// Below this many squared µm the cross product of two directions counts as parallel: no crossing.
    /// </summary>
    private const double Parallel = 1e-9;

    private readonly Region region;
    private readonly Func<double, double, bool> contains;
    private readonly STRtree<(Point A, Point B)>? edges;

    internal PathClipping(Region region)
    {
        this.region = region;
        contains = Polygons.Containment(region);
        if (Polygons.IsBox(region) || region.IsEmpty)
            return;
        edges = new STRtree<(Point, Point)>();
        foreach (var edge in Edges(region))
            edges.Insert(new Envelope(edge.A.X, edge.B.X, edge.A.Y, edge.B.Y), edge);
        edges.Build();
    }

    /// <summary>The stretches of a path inside the region (edge included), in the path's direction and order.</summary>
    internal ImmutableArray<Polyline> Inside(Polyline path) =>
        !path.Bounds.Meets(region.Bounds) ? []
        : Polygons.IsBox(region) && region.Bounds.Contains(path.Bounds) ? [path]
        : Stretches(path, inside: true);

    /// <summary>The stretches of a path outside the region, in the path's direction and order.</summary>
    internal ImmutableArray<Polyline> Outside(Polyline path) =>
        path.Bounds.Meets(region.Bounds) ? Stretches(path, inside: false) : [path];

    /// <summary>
    /// The stretches of a path inside (or outside) the region as places along it: the whole part counts segments, the
    /// fraction is the share of the way along one. In order; a closed path's stretch over its own start comes as two.
    /// </summary>
    internal ImmutableArray<(double From, double To)> Spans(ImmutableArray<Point> points, bool inside)
    {
        var spans = new List<(double From, double To)>();
        var open = false;
        for (var i = 1; i < points.Length; i++)
        {
            var (from, to) = (points[i - 1], points[i]);
            var shares = Crossings(from, to);
            for (var k = 1; k < shares.Count; k++)
            {
                if (shares[k - 1] == shares[k])
                    continue;
                var middle = (shares[k - 1] + shares[k]) / 2;
                var x = from.X + ((to.X - (double)from.X) * middle);
                var y = from.Y + ((to.Y - (double)from.Y) * middle);
                if (contains(x, y) != inside)
                    open = false;
                else if (open)
                    spans[^1] = (spans[^1].From, i - 1 + shares[k]);
                else
                {
                    spans.Add((i - 1 + shares[k - 1], i - 1 + shares[k]));
                    open = true;
                }
            }
        }
        return [.. spans];
    }

    /// <summary>The point at a place along a path, as <see cref="Spans"/> counts places.</summary>
    internal static Point At(ImmutableArray<Point> points, double place)
    {
        var segment = Math.Min((int)place, points.Length - 2);
        return points[segment].Towards(points[segment + 1], place - segment);
    }

    private ImmutableArray<Polyline> Stretches(Polyline path, bool inside)
    {
        var stretches = new List<List<Point>>();
        foreach (var (from, to) in Spans(path.Points, inside))
        {
            var stretch = new List<Point> { At(path.Points, from) };
            for (var i = (int)Math.Floor(from) + 1; i < to; i++)
                Add(stretch, path.Points[i]);
            Add(stretch, At(path.Points, to));
            if (stretch.Count >= 2)
                stretches.Add(stretch);
        }

        // A closed path runs on over its own start.
        if (path.IsClosed && stretches.Count > 1 && stretches[^1][^1] == stretches[0][0])
        {
            stretches[^1].AddRange(stretches[0].Skip(1));
            stretches.RemoveAt(0);
        }
        return [.. stretches.Select(points => new Polyline([.. points]))];

        static void Add(List<Point> stretch, Point point)
        {
            if (stretch[^1] != point)
                stretch.Add(point);
        }
    }

    /// <summary>Shares of the way from 0 to 1 at which the segment meets the outline, both ends included.</summary>
    private List<double> Crossings(Point from, Point to)
    {
        var shares = new List<double> { 0, 1 };
        var near = edges?.Query(new Envelope(from.X, to.X, from.Y, to.Y)) ?? [.. Edges(region)];
        foreach (var (a, b) in near)
        {
            double dx = to.X - (double)from.X,
                dy = to.Y - (double)from.Y;
            double ex = b.X - (double)a.X,
                ey = b.Y - (double)a.Y;
            double fx = a.X - (double)from.X,
                fy = a.Y - (double)from.Y;
            var cross = (dx * ey) - (dy * ex);
            if (Math.Abs(cross) < Parallel)
            {
                // Along the same line the ends of the edge may lie within the segment.
                var length = (dx * dx) + (dy * dy);
                if (length > 0 && (dx * fy) - (dy * fx) == 0)
                {
                    AddWithin(((fx * dx) + (fy * dy)) / length);
                    AddWithin((((b.X - (double)from.X) * dx) + ((b.Y - (double)from.Y) * dy)) / length);
                }
                continue;
            }
            var along = ((fx * ey) - (fy * ex)) / cross;
            var across = ((fx * dy) - (fy * dx)) / cross;
            if (across is >= 0 and <= 1)
                AddWithin(along);
        }
        shares.Sort();
        return shares;

        void AddWithin(double share)
        {
            if (share is > 0 and < 1)
                shares.Add(share);
        }
    }

    private static IEnumerable<(Point A, Point B)> Edges(Region region)
    {
        foreach (var ring in region.Rings)
            for (int i = 0, j = ring.Points.Length - 1; i < ring.Points.Length; j = i++)
                yield return (ring.Points[j], ring.Points[i]);
    }
}
