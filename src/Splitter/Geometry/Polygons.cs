using System.Collections.Immutable;
using NetTopologySuite.Algorithm;
using NetTopologySuite.Algorithm.Locate;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Buffer;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using NetTopologySuite.Operation.Polygonize;
using NetTopologySuite.Simplify;
using static Splitter.Geometry.EngineForm;
using Nts = NetTopologySuite.Geometries;

namespace Splitter.Geometry;

/// <summary>
/// Every polygon operation of the library, on the micrometre grid: NetTopologySuite's OverlayNG with a fixed precision
/// model. Results are normalised (<see cref="EngineForm"/>), so that they do not depend on the order of the arguments.
/// </summary>
internal static class Polygons
{
    /// <summary>
    /// How far a round offset may stray from the true arc, µm. Larger shows as facets beside a 0.4 mm thread; smaller
    /// only adds vertices.
    /// </summary>
    internal const double ArcTolerance = 10;

    /// <summary>
    /// Vertices closer than this to the outline are dropped before an offset, µm. Offsetting a finely wavy outline
    /// takes minutes otherwise; well below the tape's 100 µm step.
    /// </summary>
    private const double OffsetSimplification = 10;

    /// <summary>Mitres longer than this many half widths are cut off; the value that SVG uses by default.</summary>
    private const double MitreLimit = 4;

    /// <summary>
    /// Up to so many polygons are united in one go. Of more, those that lie apart from all others are not shown to the
    /// engine: motifs on a large ground are thousands.
    /// </summary>
    private const int MostAtOnce = 500;

    /// <summary>The ground inside closed rings that may cross themselves and each other.</summary>
    internal static Region FromRings(IEnumerable<Ring> rings, FillRule rule)
    {
        ImmutableArray<Ring> kept = [.. rings.Where(r => r.Points.Length >= 3)];
        if (kept.IsEmpty)
            return Region.Empty;
        if (kept.Length == 1 && Factory.CreatePolygon(ToLinear(kept[0])) is { IsValid: true } simple)
            return ToRegion(simple);

        // Faces of the arrangement of all edges; a face belongs when the winding number of a point in it says so.
        var lines = Factory.BuildGeometry(kept.Select(Nts.Geometry (r) => ToLinear(r)).ToList());
        var polygonizer = new Polygonizer();
        polygonizer.Add(UnaryUnionNG.Union(lines, Grid));
        var faces = polygonizer
            .GetPolygons()
            .Where(face =>
            {
                var winding = Winding(kept, InteriorPointArea.GetInteriorPoint(face));
                return rule == FillRule.NonZero ? winding != 0 : (winding & 1) != 0;
            })
            .ToList();
        return faces.Count == 0 ? Region.Empty : ToRegion(UnaryUnionNG.Union(Factory.BuildGeometry(faces), Grid));
    }

    internal static Region Union(IEnumerable<Region> regions)
    {
        ImmutableArray<Region> kept = [.. regions.Where(r => !r.IsEmpty)];
        if (kept.Length <= 1)
            return kept.IsEmpty ? Region.Empty : kept[0];
        ImmutableArray<Polygon> polygons = [.. kept.SelectMany(r => r.Polygons)];
        return polygons.Length <= MostAtOnce
            ? United(polygons)
            : Sorted(
                BoxPairs
                    .Groups([.. polygons.Select(p => p.Outer.Bounds)])
                    .Select(group => group.Select(i => polygons[i]).ToList())
                    .SelectMany(group => group is [var alone] ? [alone] : United(group).Polygons)
            );
    }

    internal static Region Union(Region a, Region b) => Union([a, b]);

    internal static Region Intersect(Region a, Region b)
    {
        if (!a.Bounds.Meets(b.Bounds))
            return Region.Empty;
        if (IsBox(b) && b.Bounds.Contains(a.Bounds))
            return a;
        if (IsBox(a) && a.Bounds.Contains(b.Bounds))
            return b;
        return ToRegion(Overlay(a.Near(b.Bounds), b.Near(a.Bounds), SpatialFunction.Intersection));
    }

    internal static Region Subtract(Region a, Region b) =>
        a.Bounds.Meets(b.Bounds) && b.Near(a.Bounds) is { IsEmpty: false } near
            ? ToRegion(Overlay(a, near, SpatialFunction.Difference))
            : a;

    /// <summary>The region grown by a distance in micrometres, or shrunk by a negative one.</summary>
    internal static Region Offset(Region region, double by, Join join = Join.Round)
    {
        if (region.IsEmpty || by == 0)
            return region;
        var style = new BufferParameters(QuadrantSegments(Math.Abs(by)))
        {
            JoinStyle =
                join == Join.Mitre ? JoinStyle.Mitre
                : join == Join.Bevel ? JoinStyle.Bevel
                : JoinStyle.Round,
            MitreLimit = MitreLimit,
        };
        // In floating point: given whole micrometres, the engine rounds crossings of the offset lines before it has
        // sorted them, and now and then returns polygons that overlap, or none.
        return ToRegion(Snapped(BufferOp.Buffer(Floating.CreateGeometry(Simplified(ToNts(region))), by, style)));
    }

    /// <summary>
    /// The ground that a pen of the given width covers along a path; a closed path has joins all round.
    /// </summary>
    /// <param name="width">Full width, micrometres.</param>
    /// <param name="mitreLimit">SVG's <c>stroke-miterlimit</c>: a longer mitre becomes a bevel.</param>
    internal static Region Stroke(Polyline path, double width, Cap cap, Join join, double mitreLimit = MitreLimit)
    {
        var style = new BufferParameters(QuadrantSegments(width / 2))
        {
            EndCapStyle =
                cap == Cap.Butt ? EndCapStyle.Flat
                : cap == Cap.Square ? EndCapStyle.Square
                : EndCapStyle.Round,
            JoinStyle = join == Join.Round ? JoinStyle.Round : JoinStyle.Bevel,
            // By default the engine drops vertices of tight bends first, and a loop narrower than the pen gets a hole.
            SimplifyFactor = 0,
        };
        Coordinate[] coordinates = [.. path.Points.Select(ToCoordinate)];
        Nts.Geometry line =
            path.IsClosed && coordinates.Length >= 4
                ? Floating.CreateLinearRing(coordinates)
                : Floating.CreateLineString(coordinates);
        var ground = Snapped(BufferOp.Buffer(line, width / 2, style));

        // The engine would cut a longer mitre off at its limit; SVG makes it a bevel. So the tips are added to bevels.
        var tips =
            join == Join.Mitre
                ? Mitres
                    .Tips(path, width / 2, mitreLimit)
                    .Select(Nts.Geometry (r) => Factory.CreatePolygon(ToLinear(r)))
                    .ToList()
                : [];
        return ToRegion(tips.Count == 0 ? ground : UnaryUnionNG.Union(Factory.BuildGeometry([ground, .. tips]), Grid));
    }

    /// <summary>
    /// Drops vertices that lie within a tolerance (µm) of the outline without them; topology is kept.
    /// </summary>
    internal static Region Simplify(Region region, double tolerance) =>
        region.IsEmpty ? region : ToRegion(Snapped(TopologyPreservingSimplifier.Simplify(ToNts(region), tolerance)));

    /// <summary>The question "is this point (x, y in µm) inside or on the edge", quick to ask many times.</summary>
    internal static Func<double, double, bool> Containment(Region region)
    {
        if (region.IsEmpty)
            return (_, _) => false;
        var (bounds, locator) = (region.Bounds, new IndexedPointInAreaLocator(ToNts(region)));
        return (x, y) =>
            x >= bounds.Left
            && x <= bounds.Right
            && y >= bounds.Top
            && y <= bounds.Bottom
            && locator.Locate(new Coordinate(x, y)) != Location.Exterior;
    }

    /// <summary>Distance from a point to the region, 0 inside; micrometres.</summary>
    internal static double Distance(Region region, Point point) =>
        region.IsEmpty ? double.PositiveInfinity : ToNts(region).Distance(Factory.CreatePoint(ToCoordinate(point)));

    /// <summary>Distance between two straight lines, micrometres.</summary>
    internal static double Distance(Point a, Point b, Point c, Point d) =>
        DistanceComputer.SegmentToSegment(ToCoordinate(a), ToCoordinate(b), ToCoordinate(c), ToCoordinate(d));

    private static Region United(IEnumerable<Polygon> polygons) =>
        ToRegion(
            UnaryUnionNG.Union(Factory.BuildGeometry(polygons.Select(Nts.Geometry (p) => ToNts(p)).ToList()), Grid)
        );

    private static Nts.Geometry Overlay(Region a, Region b, SpatialFunction function) =>
        OverlayNG.Overlay(ToNts(a), ToNts(b), function, Grid);

    internal static bool IsBox(Region region) =>
        region.Polygons is [{ Holes.IsEmpty: true, Outer.Points.Length: 4 } only]
        && Math.Abs(only.Outer.SignedArea) == (double)region.Bounds.Width * region.Bounds.Height;

    private static Nts.Geometry Simplified(Nts.Geometry geometry) =>
        TopologyPreservingSimplifier.Simplify(geometry, OffsetSimplification);

    private static int QuadrantSegments(double radius) =>
        radius <= ArcTolerance
            ? 1
            : Math.Clamp((int)Math.Ceiling(Math.PI / 4 / Math.Acos(1 - (ArcTolerance / radius))), 2, 64);

    private static int Winding(ImmutableArray<Ring> rings, Coordinate at)
    {
        var winding = 0;
        foreach (var ring in rings)
        {
            var points = ring.Points;
            for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
            {
                var (a, b) = (ToCoordinate(points[j]), ToCoordinate(points[i]));
                if (a.Y <= at.Y != b.Y <= at.Y)
                {
                    var side = Orientation.Index(a, b, at) == OrientationIndex.CounterClockwise;
                    if (side == b.Y > a.Y)
                        winding += b.Y > a.Y ? 1 : -1;
                }
            }
        }
        return winding;
    }
}
