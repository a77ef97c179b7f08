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
    /// <summary>Below this many squared µm the cross product of two directions counts as parallel: no crossing.</summary>
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

    private ImmutableArray<Polyline> Stretches(Polyline path, bool inside)
    {
        var stretches = new List<List<Point>>();
        var open = false;
        for (var i = 1; i < path.Points.Length; i++)
        {
            var (from, to) = (path.Points[i - 1], path.Points[i]);
            if (from == to)
                continue;
            var shares = Crossings(from, to);
            for (var k = 1; k < shares.Count; k++)
            {
                var middle = (shares[k - 1] + shares[k]) / 2;
                var x = from.X + ((to.X - (double)from.X) * middle);
                var y = from.Y + ((to.Y - (double)from.Y) * middle);
                if (contains(x, y) != inside)
                {
                    open = false;
                    continue;
                }
                var (a, b) = (from.Towards(to, shares[k - 1]), from.Towards(to, shares[k]));
                if (!open)
                    stretches.Add([a]);
                open = true;
                if (stretches[^1][^1] != b)
                    stretches[^1].Add(b);
            }
        }
        stretches.RemoveAll(s => s.Count < 2);

        // A closed path runs on over its own start.
        if (path.IsClosed && stretches.Count > 1 && stretches[^1][^1] == stretches[0][0])
        {
            stretches[^1].AddRange(stretches[0].Skip(1));
            stretches.RemoveAt(0);
        }
        return [.. stretches.Select(points => new Polyline([.. points]))];
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
                if ((dx * fy) - (dy * fx) == 0)
                {
                    var length = (dx * dx) + (dy * dy);
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
