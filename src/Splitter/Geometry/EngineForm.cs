using NetTopologySuite;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Implementation;
using NetTopologySuite.Geometries.Utilities;
using NetTopologySuite.Precision;
using Nts = NetTopologySuite.Geometries;

namespace Splitter.Geometry;

/// <summary>
/// Regions in the form of the engine of <see cref="Polygons"/>, NetTopologySuite, and back. What comes back is
/// normalised: outer rings clockwise with y down, every ring from its smallest point, polygons sorted.
/// </summary>
internal static class EngineForm
{
    /// <summary>Whole micrometres.</summary>
    internal static readonly PrecisionModel Grid = new(1);

    /// <summary>Makes geometries on the grid.</summary>
    internal static readonly GeometryFactory Factory = new NtsGeometryServices(
        CoordinateArraySequenceFactory.Instance,
        Grid,
        0,
        GeometryOverlay.NG,
        new CoordinateEqualityComparer()
    ).CreateGeometryFactory();

    /// <summary>Makes geometries in floating point.</summary>
    internal static readonly GeometryFactory Floating = new NtsGeometryServices(
        CoordinateArraySequenceFactory.Instance,
        new PrecisionModel(),
        0,
        GeometryOverlay.NG,
        new CoordinateEqualityComparer()
    ).CreateGeometryFactory();

    /// <summary>The region in the engine's own form, for algorithms of the engine that have one user only.</summary>
    internal static Nts.Geometry ToNts(Region region) => Factory.CreateMultiPolygon([.. region.Polygons.Select(ToNts)]);

    internal static Nts.Polygon ToNts(Polygon p) =>
        Factory.CreatePolygon(ToLinear(p.Outer), [.. p.Holes.Select(ToLinear)]);

    /// <summary>The areas of a geometry of the engine, on the micrometre grid and normalised.</summary>
    internal static Region ToRegion(Nts.Geometry geometry) =>
        Sorted(
            PolygonExtracter
                .GetPolygons(geometry)
                .Cast<Nts.Polygon>()
                .Where(p => !p.IsEmpty)
                .Select(p => new Polygon(
                    ToRing(p.ExteriorRing, clockwise: true),
                    [.. p.InteriorRings.Select(h => ToRing(h, clockwise: false)).OrderBy(r => r.Points[0])]
                ))
        );

    /// <summary>Whatever their order was.</summary>
    internal static Region Sorted(IEnumerable<Polygon> polygons) =>
        new([.. polygons.OrderBy(p => p.Outer.Points[0]).ThenBy(p => p.Outer.Points[1])]);

    /// <summary>On the grid.</summary>
    internal static Nts.Geometry Snapped(Nts.Geometry geometry) =>
        geometry.IsEmpty ? geometry : GeometryPrecisionReducer.Reduce(geometry, Grid);

    internal static LinearRing ToLinear(Ring ring) =>
        Factory.CreateLinearRing([.. ring.Points.Select(ToCoordinate), ToCoordinate(ring.Points[0])]);

    private static Ring ToRing(LineString ring, bool clockwise)
    {
        Point[] points = [.. ring.Coordinates.Take(ring.NumPoints - 1).Select(ToPoint)];
        if (new Ring([.. points]).SignedArea > 0 != clockwise)
            Array.Reverse(points);
        var start = Array.IndexOf(points, points.Min());
        return new Ring([.. points.Skip(start), .. points.Take(start)]);
    }

    internal static Coordinate ToCoordinate(Point p) => new(p.X, p.Y);

    private static Point ToPoint(Coordinate c) =>
        new((int)Math.Round(c.X, MidpointRounding.AwayFromZero), (int)Math.Round(c.Y, MidpointRounding.AwayFromZero));
}
