using System.Collections.Immutable;
using NetTopologySuite.Algorithm;
using NetTopologySuite.Algorithm.Locate;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using NetTopologySuite.Operation.Buffer;
using Splitter.Geometry.Arrangements;
using static Splitter.Geometry.EngineForm;
using Nts = NetTopologySuite.Geometries;

namespace Splitter.Geometry;

/// <summary>
/// Every polygon operation of the library, on the micrometre grid. Results are normalised: outer rings clockwise with y
/// down, holes the other way, every ring from its smallest point, polygons sorted; nothing depends on the order of the
/// arguments. What lies in what, an <see cref="Arrangement"/> of all outlines tells; offsets and distances are
/// NetTopologySuite's.
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

    /// <summary>The ground inside closed rings that may cross themselves and each other.</summary>
    internal static Region FromRings(IEnumerable<Ring> rings, FillRule rule)
    {
        var lines = new Outlines();
        foreach (var ring in rings)
            lines.Add(ring, Winding.OfFirst);
        return Arrangement.Ground(
            lines,
            rule == FillRule.NonZero ? winding => winding.First != 0 : winding => (winding.First & 1) != 0
        );
    }

    internal static Region Union(IEnumerable<Region> regions)
    {
        // Lines that run along each other meet in each pair: of what is drawn 500 times over once is enough.
        ImmutableArray<Region> kept = [.. regions.Where(r => !r.IsEmpty).Distinct(SameOutlines.Comparer)];
        if (kept.Length <= 1)
            return kept.IsEmpty ? Region.Empty : kept[0];
        var lines = new Outlines();
        foreach (var region in kept)
            lines.Add(region, Winding.OfFirst);
        return Arrangement.Ground(lines, winding => winding.First > 0);
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
        var window = a.Bounds.Common(b.Bounds);
        return Arrangement.Ground(
            new Outlines().Add(a.Near(window), Winding.OfFirst, window).Add(b.Near(window), Winding.OfSecond, window),
            winding => winding is { First: > 0, Second: > 0 }
        );
    }

    internal static Region Subtract(Region a, Region b) =>
        a.Bounds.Meets(b.Bounds) && b.Near(a.Bounds) is { IsEmpty: false } near
            ? Arrangement.Ground(
                new Outlines().Add(a, Winding.OfFirst).Add(near, Winding.OfSecond, a.Bounds),
                winding => winding is { First: > 0, Second: <= 0 }
            )
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
        var plainer = FineTeeth.Closed(Simplify(region, OffsetSimplification), by, OffsetSimplification);
        // Offset lines come no further than this from their outline.
        var reach = Math.Abs(by) * (join == Join.Mitre ? MitreLimit : 1);
        return Snapped(
            ApartGround
                .Of(plainer, (int)Math.Ceiling(reach) + 1)
                .Select(some => BufferOp.Buffer(Floating.CreateGeometry(ToNts(some)), by, style))
        );
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
        var ground = Snapped([BufferOp.Buffer(line, width / 2, style)]);

        // The engine would cut a longer mitre off at its limit; SVG makes it a bevel. So the tips are added to bevels.
        return join == Join.Mitre
            ? Union([
                ground,
                .. Mitres.Tips(path, width / 2, mitreLimit).Select(tip => new Region([new Polygon(tip, [])])),
            ])
            : ground;
    }

    /// <summary>
    /// Drops vertices that lie within a tolerance (µm) of the outline without them; topology is kept.
    /// </summary>
    internal static Region Simplify(Region region, double tolerance) =>
        region.IsEmpty ? region : new Simplification(region, tolerance).Simplified();

    /// <summary>
    /// The question "is this point (x, y in µm) inside or on the edge", quick to ask many times and by many threads.
    /// </summary>
    internal static Func<double, double, bool> Containment(Region region)
    {
        if (region.IsEmpty)
            return (_, _) => false;
        var (bounds, locator) = (region.Bounds, new IndexedPointInAreaLocator(ToNts(region)));
        // The engine makes its index at the first question, which two threads may come to ask at once.
        locator.Locate(new Coordinate(bounds.Left, bounds.Top));
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

    internal static bool IsBox(Region region) =>
        region.Polygons is [{ Holes.IsEmpty: true, Outer.Points.Length: 4 } only]
        && Math.Abs(only.Outer.SignedArea) == (double)region.Bounds.Width * region.Bounds.Height;

    /// <summary>The areas of geometries of the engine, on the grid.</summary>
    private static Region Snapped(IEnumerable<Nts.Geometry> geometries)
    {
        var lines = new Outlines();
        foreach (var geometry in geometries)
        foreach (var polygon in PolygonExtracter.GetPolygons(geometry).Cast<Nts.Polygon>())
            lines.Add(polygon);
        return Arrangement.Ground(lines, winding => winding.First > 0);
    }

    private static int QuadrantSegments(double radius) =>
        radius <= ArcTolerance
            ? 1
            : Math.Clamp((int)Math.Ceiling(Math.PI / 4 / Math.Acos(1 - (ArcTolerance / radius))), 2, 64);
}
