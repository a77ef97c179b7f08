using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Runs;

/// <summary>Penetrations along a line: at its ends and corners, and evenly between.</summary>
internal static class EvenRun
{
    /// <summary>A line that turns by more than this at a vertex has a corner there, degrees: rounder ones read as a curve.</summary>
    private const double Corner = 30;

    /// <summary>
    /// How far a stitch may cut across a curve, µm: a quarter of the thread's width does not show. Smaller crowds the
    /// penetrations of a tight curve.
    /// </summary>
    private const double Sagitta = 100;

    /// <summary>In a tight curve stitches are not made shorter than this, µm. Common practice, no source.</summary>
    private const double ShortestOnCurve = 800;

    /// <summary>The places where the needle goes in, first and last point included, none doubled.</summary>
    /// <param name="longest">Longest stitch, µm.</param>
    internal static ImmutableArray<Point> Along(ImmutableArray<Point> points, double longest)
    {
        var places = ImmutableArray.CreateBuilder<Point>();
        places.Add(points[0]);
        var from = 0;
        for (var i = 1; i < points.Length; i++)
            if (i == points.Length - 1 || IsCorner(points[i - 1], points[i], points[i + 1]))
            {
                AddStretch(points.AsSpan(from, i - from + 1), longest, places);
                from = i;
            }
        return places.ToImmutable();
    }

    private static void AddStretch(ReadOnlySpan<Point> points, double longest, ImmutableArray<Point>.Builder places)
    {
        var lengths = new double[points.Length];
        for (var i = 1; i < points.Length; i++)
            lengths[i] = lengths[i - 1] + points[i - 1].DistanceTo(points[i]);
        var most = Math.Max(1, (int)(lengths[^1] / ShortestOnCurve));
        var count = Math.Max(1, (int)Math.Ceiling(lengths[^1] / longest));
        while (count < most && !IsClose(points, lengths, count))
            count++;
        for (var k = 1; k <= count; k++)
            places.Add(At(points, lengths, lengths[^1] * k / count));
    }

    /// <summary>Every vertex lies near the chord that spans it.</summary>
    private static bool IsClose(ReadOnlySpan<Point> points, double[] lengths, int count)
    {
        var (chord, from, to) = (-1, default(Point), default(Point));
        for (var i = 1; i < points.Length - 1; i++)
        {
            var k = Math.Min(count - 1, (int)(lengths[i] / lengths[^1] * count));
            if (k != chord)
                (chord, from, to) = (
                    k,
                    At(points, lengths, lengths[^1] * k / count),
                    At(points, lengths, lengths[^1] * (k + 1) / count)
                );
            var (along, off) = (Vector.Between(from, to), Vector.Between(from, points[i]));
            if (along.Length > 0 && Math.Abs(Vector.Cross(along, off)) / along.Length > Sagitta)
                return false;
        }
        return true;
    }

    private static Point At(ReadOnlySpan<Point> points, double[] lengths, double along)
    {
        var i = Array.BinarySearch(lengths, along);
        if (i >= 0)
            return points[i];
        i = ~i;
        return i >= points.Length
            ? points[^1]
            : points[i - 1].Towards(points[i], (along - lengths[i - 1]) / (lengths[i] - lengths[i - 1]));
    }

    private static bool IsCorner(Point before, Point at, Point after)
    {
        var (a, b) = (Vector.Between(before, at), Vector.Between(at, after));
        return Math.Abs(Math.Atan2(Vector.Cross(a, b), Vector.Dot(a, b))) > Corner * Math.PI / 180;
    }
}
