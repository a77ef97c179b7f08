using NetTopologySuite;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Implementation;
using Nts = NetTopologySuite.Geometries;

namespace Splitter.Geometry;

/// <summary>
/// Regions in the form of NetTopologySuite, the engine that draws offsets and measures distances.
/// </summary>
internal static class EngineForm
{
    /// <summary>Makes geometries on the grid.</summary>
    internal static readonly GeometryFactory Factory = new NtsGeometryServices(
        CoordinateArraySequenceFactory.Instance,
        new PrecisionModel(1),
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

    internal static LinearRing ToLinear(Ring ring) =>
        Factory.CreateLinearRing([.. ring.Points.Select(ToCoordinate), ToCoordinate(ring.Points[0])]);

    internal static Coordinate ToCoordinate(Point p) => new(p.X, p.Y);
}
