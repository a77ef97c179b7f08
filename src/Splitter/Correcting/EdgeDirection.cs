using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Correcting;

/// <summary>Which way an edge or a line runs where a cross lies on it.</summary>
internal static class EdgeDirection
{
    /// <summary>Points of the line are taken so far apart, µm: a few dozen within the reach of a cross.</summary>
    private const int Step = 200;

    /// <summary>As for every direction: machines differ in the last of sixteen decimals.</summary>
    private const int Decimals = 9;

    /// <summary>
    /// Square to it, of length 1: the direction in which what a person sees of it under the cross has its least second
    /// moment, so that steps in an outline do not count.
    /// </summary>
    internal static Vector Across(Shape shape, Point at)
    {
        var lines = shape switch
        {
            FillShape => shape.Footprint.Rings.Select(ring => ring.ToPolyline()),
            SatinShape satin => satin.Columns.Select(c => new Polyline([.. c.Rungs.Select(rung => rung.Middle)])),
            RunShape run => run.Lines,
            _ => throw new InvalidOperationException($"{shape.GetType().Name} has no edge to meet."),
        };
        // A cross may lie a little beside what was cut away under later shapes.
        for (var reach = AlignmentStitch.Arm; ; reach *= 2)
        {
            var seen = lines.SelectMany(line => Near(line, at, reach)).ToList();
            if (seen.Count > 1)
                return Least(seen);
        }
    }

    private static IEnumerable<Vector> Near(Polyline line, Point at, int reach)
    {
        for (var i = 1; i < line.Points.Length; i++)
        {
            var (from, to) = (line.Points[i - 1], line.Points[i]);
            if (Polygons.Distance(at, at, from, to) > reach)
                continue;
            var way = Vector.Between(from, to);
            var count = Math.Max(1, (int)(way.Length / Step));
            for (var k = 0; k < count; k++)
            {
                var place = Vector.Between(at, from) + (way * ((k + 0.5) / count));
                if (place.Length <= reach)
                    yield return place;
            }
        }
    }

    private static Vector Least(List<Vector> places)
    {
        var middle = places.Aggregate((sum, p) => sum + p) * (1.0 / places.Count);
        var (xx, xy, yy) = (0.0, 0.0, 0.0);
        foreach (var p in places.Select(p => p - middle))
            (xx, xy, yy) = (xx + (p.X * p.X), xy + (p.X * p.Y), yy + (p.Y * p.Y));
        var along = Math.Atan2(2 * xy, xx - yy) / 2;
        return new(Math.Round(-Math.Sin(along), Decimals), Math.Round(Math.Cos(along), Decimals));
    }
}
