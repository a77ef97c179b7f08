using System.Collections.Immutable;
using Splitter.Artwork.Svg.Paths;
using Splitter.Geometry;

namespace Splitter.Artwork.Svg;

/// <summary>From µm in double precision to whole ones.</summary>
internal static class Snapping
{
    /// <summary>
    /// 20 m, as of other drawings, µm. The ground of a stroke reaches at most as far again, so that two points are at
    /// most 80 m apart: products of such differences, by which crossings are told, are still exact in a double.
    /// </summary>
    internal const double Reach = PlaneGeometry.Reach;

    /// <summary>
    /// A dot is a line this long, µm: enough to have a direction, too short to see beside a 0.4 mm thread.
    /// </summary>
    private const double DotLength = 20;

    internal static bool Reaches(List<FlatPath> paths) =>
        paths.TrueForAll(p => p.Points.TrueForAll(s => Math.Abs(s.X) <= Reach && Math.Abs(s.Y) <= Reach));

    internal static Point Snap(Spot spot) =>
        new(
            (int)Math.Round(Math.Clamp(spot.X, -Reach, Reach), MidpointRounding.AwayFromZero),
            (int)Math.Round(Math.Clamp(spot.Y, -Reach, Reach), MidpointRounding.AwayFromZero)
        );

    /// <summary>The ground inside; every subpath counts as closed.</summary>
    internal static Region Ground(List<FlatPath> paths, FillRule rule) =>
        Polygons.FromRings(paths.Select(p => new Ring(Ring(p.Points))), rule);

    /// <summary>The paths that a pen draws; those without length are dots unless the cap hides them.</summary>
    internal static ImmutableArray<Polyline> Lines(List<FlatPath> paths, Cap cap) =>
        [.. paths.Select(p => Line(p, cap)).OfType<Polyline>()];

    private static Polyline? Line(FlatPath path, Cap cap)
    {
        var points = Distinct(path.Points);
        if (points.Count > 1)
        {
            if (path.Closed && points[^1] != points[0])
                points.Add(points[0]);
            return new([.. points]);
        }

        // A bare move draws nothing (SVG 1.1, 11.4).
        if (cap == Cap.Butt || (path.Points.Count == 1 && !path.Closed))
            return null;
        var along = path.Points[^1] - path.Points[0];
        var half = along.Length > 0 ? DotLength / 2 / along.Length * along : new Spot(DotLength / 2, 0);
        return new([Snap(path.Points[0] - half), Snap(path.Points[0] + half)]);
    }

    private static ImmutableArray<Point> Ring(List<Spot> spots)
    {
        var points = Distinct(spots);
        while (points.Count > 1 && points[^1] == points[0])
            points.RemoveAt(points.Count - 1);
        return [.. points];
    }

    private static List<Point> Distinct(List<Spot> spots)
    {
        var points = new List<Point>(spots.Count);
        foreach (var spot in spots)
        {
            var point = Snap(spot);
            if (points.Count == 0 || points[^1] != point)
                points.Add(point);
        }
        return points;
    }
}
