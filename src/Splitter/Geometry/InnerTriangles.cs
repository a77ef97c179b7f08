using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.Triangulate;
using NetTopologySuite.Triangulate.QuadEdge;

namespace Splitter.Geometry;

/// <summary>
/// The Delaunay triangles between closely spaced points of a region's outline that lie inside it. Their sides run from
/// one side of the outline to the other across the ground, and the centres of their circles lie near the region's
/// centre line: the Voronoi diagram of dense outline points approaches the medial axis (Brandt, "Convergence and
/// continuity criteria for discrete approximations of the continuous planar skeleton", CVGIP 59, 1994; title from
/// memory). With <see cref="Polygons"/> the only user of the engine's types.
/// </summary>
internal sealed class InnerTriangles
{
    /// <summary>
    /// How often outline edges that the triangulation does not hold are halved. Each round mends necks of half the
    /// width; what is still missing then is narrower than a thread.
    /// </summary>
    private const int MendingRounds = 5;

    /// <summary>Edges shorter than this are not halved, µm: the halves would leave the grid's accuracy.</summary>
    private const double ShortestHalved = 16;

    private InnerTriangles(List<Point> points, List<int> next, ImmutableArray<(int A, int B, int C)> corners)
    {
        Points = [.. points];
        Next = [.. next];
        var previous = new int[next.Count];
        for (var i = 0; i < next.Count; i++)
            previous[next[i]] = i;
        Previous = [.. previous];
        Corners = [.. corners.SelectMany(t => new[] { t.A, t.B, t.C })];
        Across = Neighbours();
    }

    /// <summary>Points of the outline.</summary>
    internal ImmutableArray<Point> Points { get; }

    /// <summary>For each point the one after it on its ring, with the ground on the right.</summary>
    internal ImmutableArray<int> Next { get; }

    /// <summary>For each point the one before it.</summary>
    internal ImmutableArray<int> Previous { get; }

    /// <summary>Three points a triangle, clockwise as seen with y down.</summary>
    internal ImmutableArray<int> Corners { get; }

    /// <summary>
    /// For each triangle's side (from its corner k to k + 1) the side on its other face; -1 on the outline.
    /// </summary>
    internal ImmutableArray<int> Across { get; }

    internal int Count => Corners.Length / 3;

    /// <summary>The triangles of a region, its outline divided into steps (µm) no longer than this.</summary>
    internal static InnerTriangles Of(Region region, double step)
    {
        var (points, next) = Sampled(region, step);
        var triangles = Triangulated(points);
        for (var round = 0; round < MendingRounds && Mend(points, next, triangles); round++)
            triangles = Triangulated(points);
        // Asked of the outline as it was sampled: rounding leaves slivers between it and the region's own.
        var contains = Polygons.Containment(Polygons.FromRings(Rings(points, next), FillRule.EvenOdd));
        bool Inside((int A, int B, int C) t)
        {
            var (a, b, c) = (points[t.A], points[t.B], points[t.C]);
            return contains(((double)a.X + b.X + c.X) / 3, ((double)a.Y + b.Y + c.Y) / 3);
        }
        return new(points, next, [.. triangles.Where(Inside)]);
    }

    private static IEnumerable<Ring> Rings(List<Point> points, List<int> next)
    {
        var passed = new bool[points.Count];
        for (var first = 0; first < points.Count; first++)
        {
            var ring = ImmutableArray.CreateBuilder<Point>();
            for (var at = first; !passed[at]; at = next[at])
            {
                passed[at] = true;
                ring.Add(points[at]);
            }
            if (ring.Count > 0)
                yield return new Ring(ring.ToImmutable());
        }
    }

    private static (List<Point> Points, List<int> Next) Sampled(Region region, double step)
    {
        var (points, next, seen) = (new List<Point>(), new List<int>(), new HashSet<Point>());
        foreach (var ring in region.Rings)
        {
            var first = points.Count;
            for (var i = 0; i < ring.Points.Length; i++)
            {
                var (from, to) = (ring.Points[i], ring.Points[(i + 1) % ring.Points.Length]);
                var parts = Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) / step));
                for (var part = 0; part < parts; part++)
                {
                    // Where rings touch, one of them passes the shared point by.
                    if (from.Towards(to, part / (double)parts) is var point && seen.Add(point))
                        points.Add(point);
                }
            }
            for (var i = first; i < points.Count; i++)
                next.Add(i + 1 < points.Count ? i + 1 : first);
        }
        return (points, next);
    }

    /// <summary>Halves outline edges that no triangle has; false when there are none.</summary>
    private static bool Mend(List<Point> points, List<int> next, ImmutableArray<(int A, int B, int C)> triangles)
    {
        var sides = new HashSet<(int, int)>();
        foreach (var (a, b, c) in triangles)
        {
            sides.Add((a, b));
            sides.Add((b, c));
            sides.Add((c, a));
        }
        var (count, seen) = (points.Count, new HashSet<Point>(points));
        for (var i = 0; i < count; i++)
        {
            var (from, to) = (points[i], points[next[i]]);
            if (sides.Contains((i, next[i])) || sides.Contains((next[i], i)) || from.DistanceTo(to) < ShortestHalved)
                continue;
            var middle = from.Towards(to, 0.5);
            if (!seen.Add(middle))
                continue;
            points.Add(middle);
            next.Add(next[i]);
            next[i] = points.Count - 1;
        }
        return points.Count > count;
    }

    /// <summary>
    /// All triangles of the points' convex hull, clockwise with y down, from the smallest corner, sorted. Read from the
    /// engine's edges: its own list of triangles takes longer than to find them.
    /// </summary>
    internal static ImmutableArray<(int A, int B, int C)> Triangulated(List<Point> points)
    {
        var builder = new DelaunayTriangulationBuilder();
        // Sites know their numbers; those of the engine's frame have none.
        builder.SetSites([.. points.Select((p, i) => new CoordinateZ(p.X, p.Y, i))]);
        var triangles = new List<(int, int, int)>(2 * points.Count);
        foreach (var edge in builder.GetSubdivision().GetEdges())
            if (edge.IsLive)
            {
                AddLeft(edge);
                AddLeft(edge.Sym);
            }
        triangles.Sort();
        return [.. triangles];

        // From the edge that leaves the smallest corner alone, so that each comes once.
        void AddLeft(QuadEdge edge)
        {
            var (a, b, c) = (edge.Orig.Z, edge.Dest.Z, edge.LNext.Dest.Z);
            if (!(a < b && a < c))
                return;
            var turn = Cross(points[(int)a], points[(int)b], points[(int)c]);
            if (turn != 0)
                triangles.Add(turn > 0 ? ((int)a, (int)b, (int)c) : ((int)a, (int)c, (int)b));
        }
    }

    private ImmutableArray<int> Neighbours()
    {
        var (across, sides) = (new int[Corners.Length], new Dictionary<(int, int), int>(Corners.Length));
        for (var side = 0; side < Corners.Length; side++)
            sides[(Corners[side], Corners[NextSide(side)])] = side;
        for (var side = 0; side < Corners.Length; side++)
        {
            var (from, to) = (Corners[side], Corners[NextSide(side)]);
            var outline = Next[from] == to || Next[to] == from;
            across[side] = !outline && sides.TryGetValue((to, from), out var other) ? other : -1;
        }
        return [.. across];
    }

    /// <summary>The side after this one, round the same triangle.</summary>
    internal static int NextSide(int side) => side % 3 == 2 ? side - 2 : side + 1;

    /// <summary>Positive when a, b, c run clockwise as seen with y down; twice the triangle's area.</summary>
    internal static long Cross(Point a, Point b, Point c) =>
        (((long)b.X - a.X) * ((long)c.Y - a.Y)) - (((long)b.Y - a.Y) * ((long)c.X - a.X));
}
