using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using Splitter.Geometry;
using Nts = NetTopologySuite.Geometries;
using Point = Splitter.Geometry.Point;

namespace Splitter.Artwork;

/// <summary>Simple features (OGC 06-103r4), as WKT and GeoJSON both have them, laid on the drawing.</summary>
internal static class PlaneGeometry
{
    /// <summary>
    /// Coordinates stay within this of the artwork's corner, µm: well inside what whole micrometres can hold.
    /// </summary>
    internal const int Reach = 20_000 * Units.Millimetre;

    /// <summary>Every coordinate is a number (millimetres) within <see cref="Reach"/>.</summary>
    internal static bool IsWithinReach(Nts.Geometry geometry) =>
        geometry.Coordinates.All(c =>
            Math.Abs(c.X) * Units.Millimetre <= Reach && Math.Abs(c.Y) * Units.Millimetre <= Reach
        );

    /// <summary>Any of it is a point, which cannot be sewn.</summary>
    internal static bool HasPoints(Nts.Geometry geometry) => Parts(geometry).Any(g => g is Nts.Point);

    /// <summary>Its polygons cross themselves and each other far too often.</summary>
    internal static bool IsTangled(Nts.Geometry geometry) =>
        Tangle.IsTooMuch(
            Parts(geometry)
                .OfType<Nts.Polygon>()
                .SelectMany(p => p.InteriorRings.Prepend(p.ExteriorRing))
                .Select(ring => ring.Coordinates.Select(c => (c.X, c.Y)).ToList())
        );

    /// <summary>The ground of all its polygons.</summary>
    internal static Region Ground(Nts.Geometry geometry, Func<double, double, Point> place) =>
        Polygons.Union(
            Parts(geometry)
                .OfType<Nts.Polygon>()
                .Select(p =>
                    Polygons.FromRings(
                        p.InteriorRings.Prepend(p.ExteriorRing).Select(r => ToRing(r, place)),
                        FillRule.EvenOdd
                    )
                )
        );

    /// <summary>All its lines, the outlines of its polygons among them.</summary>
    internal static ImmutableArray<Polyline> Paths(Nts.Geometry geometry, Func<double, double, Point> place) =>
        [
            .. Parts(geometry)
                .SelectMany(g =>
                    g switch
                    {
                        Nts.Polygon p => p.InteriorRings.Prepend(p.ExteriorRing),
                        LineString line => [line],
                        _ => [],
                    }
                )
                .Select(line => Distinct(line.Coordinates, place))
                .Where(points => points.Length >= 2)
                .Select(points => new Polyline(points)),
        ];

    private static Ring ToRing(LineString ring, Func<double, double, Point> place)
    {
        var points = Distinct(ring.Coordinates, place);
        return new(points.Length > 1 && points[0] == points[^1] ? points[..^1] : points);
    }

    /// <summary>Neighbours that fall on one micrometre are one point.</summary>
    private static ImmutableArray<Point> Distinct(Coordinate[] coordinates, Func<double, double, Point> place)
    {
        var points = ImmutableArray.CreateBuilder<Point>();
        foreach (var c in coordinates)
        {
            var point = place(c.X, c.Y);
            if (points.Count == 0 || points[^1] != point)
                points.Add(point);
        }
        return points.ToImmutable();
    }

    private static IEnumerable<Nts.Geometry> Parts(Nts.Geometry geometry) =>
        geometry is GeometryCollection collection ? collection.Geometries.SelectMany(Parts) : [geometry];
}
