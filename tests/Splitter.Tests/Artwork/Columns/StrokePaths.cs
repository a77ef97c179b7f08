using System.Collections.Immutable;
using CsCheck;
using Splitter.Geometry;

namespace Splitter.Tests.Artwork.Columns;

/// <summary>Random centre lines.</summary>
internal static class StrokePaths
{
    private static readonly Gen<Point> Places = Gen.Select(
        Gen.Int[0, 40_000],
        Gen.Int[0, 40_000],
        (x, y) => new Point(x, y)
    );

    /// <summary>Open lines with corners of any angle.</summary>
    internal static readonly Gen<Polyline> Cornered = Places
        .Array[2, 7]
        .Where(NoTwins)
        .Select(p => new Polyline([.. p]));

    /// <summary>Closed lines with corners of any angle.</summary>
    internal static readonly Gen<Polyline> ClosedCornered = Places
        .Array[3, 6]
        .Where(NoTwins)
        .Select(p => new Polyline([.. p, p[0]]));

    /// <summary>Smooth curves through random places, flattened to 0.02 mm.</summary>
    internal static readonly Gen<Polyline> Smooth = Places
        .Array[3, 6]
        .Where(NoTwins)
        .Select(p => Curve(p, closed: false));

    /// <summary>Closed smooth curves.</summary>
    internal static readonly Gen<Polyline> ClosedSmooth = Places
        .Array[3, 6]
        .Where(NoTwins)
        .Select(p => Curve(p, closed: true));

    /// <summary>A line that wavers: many short legs that turn a little to either side.</summary>
    internal static readonly Gen<Polyline> Wavering = Gen.Double[-0.5, 0.5]
        .Array[10, 60]
        .Select(turns =>
        {
            var (x, y, angle) = (20_000.0, 20_000.0, 0.0);
            var points = ImmutableArray.CreateBuilder<Point>();
            points.Add(new(20_000, 20_000));
            foreach (var turn in turns)
            {
                angle += turn;
                x += 600 * Math.Cos(angle);
                y += 600 * Math.Sin(angle);
                points.Add(new((int)x, (int)y));
            }
            return new Polyline(points.ToImmutable());
        });

    /// <summary>Corners of any angle.</summary>
    internal static readonly Gen<Polyline> AnyCornered = Gen.OneOf(Cornered, ClosedCornered);

    /// <summary>No corner at all.</summary>
    internal static readonly Gen<Polyline> AnySmooth = Gen.OneOf(Smooth, ClosedSmooth);

    /// <summary>An open path turns by less than 30 degrees within a length of either end.</summary>
    internal static bool EndsRunOn(Polyline path, double length) =>
        path.IsClosed || (RunsOn(path.Points, length) && RunsOn([.. path.Points.Reverse()], length));

    private static bool RunsOn(ImmutableArray<Point> points, double length)
    {
        var first = Vector.Between(points[0], points[1]);
        for (var i = 1; i < points.Length - 1 && points[i].DistanceTo(points[0]) < length; i++)
        {
            var leg = Vector.Between(points[i], points[i + 1]);
            if (Math.Abs(Math.Atan2(Vector.Cross(first, leg), Vector.Dot(first, leg))) > Math.PI / 6)
                return false;
        }
        return true;
    }

    private static bool NoTwins(Point[] points) =>
        points.Append(points[0]).Zip(points.Skip(1)).All(p => p.First.DistanceTo(p.Second) > 2000);

    /// <summary>A cubic through the places, each tangent parallel to the line between its neighbours.</summary>
    private static Polyline Curve(Point[] p, bool closed)
    {
        var points = new List<Point> { p[0] };
        var n = p.Length;
        for (var i = 0; i < (closed ? n : n - 1); i++)
        {
            var (a, d) = (p[i], p[(i + 1) % n]);
            var before = closed || i > 0 ? p[(i + n - 1) % n] : a;
            var after = closed || i + 2 < n ? p[(i + 2) % n] : d;
            Flatten(
                points,
                (a.X, a.Y),
                (a.X + ((d.X - before.X) / 6.0), a.Y + ((d.Y - before.Y) / 6.0)),
                (d.X - ((after.X - a.X) / 6.0), d.Y - ((after.Y - a.Y) / 6.0)),
                (d.X, d.Y),
                8
            );
        }
        return new([.. points]);
    }

    private static void Flatten(
        List<Point> points,
        (double X, double Y) a,
        (double X, double Y) b,
        (double X, double Y) c,
        (double X, double Y) d,
        int depth
    )
    {
        // Twice the second difference bounds how far the chord strays.
        var stray = Math.Max(
            Math.Abs(a.X - (2 * b.X) + c.X) + Math.Abs(a.Y - (2 * b.Y) + c.Y),
            Math.Abs(b.X - (2 * c.X) + d.X) + Math.Abs(b.Y - (2 * c.Y) + d.Y)
        );
        if (depth == 0 || stray * 0.75 < 20)
        {
            points.Add(new((int)Math.Round(d.X), (int)Math.Round(d.Y)));
            return;
        }
        var (ab, bc, cd) = (Half(a, b), Half(b, c), Half(c, d));
        var (abc, bcd) = (Half(ab, bc), Half(bc, cd));
        var middle = Half(abc, bcd);
        Flatten(points, a, ab, abc, middle, depth - 1);
        Flatten(points, middle, bcd, cd, d, depth - 1);
    }

    private static (double X, double Y) Half((double X, double Y) a, (double X, double Y) b) =>
        ((a.X + b.X) / 2, (a.Y + b.Y) / 2);
}
