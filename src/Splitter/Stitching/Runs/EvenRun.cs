using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Runs;

/// <summary>Penetrations along a line: at its ends and corners, and evenly between.</summary>
internal static class EvenRun
{
    /// <summary>
    /// A line that turns by more than this at a vertex has a corner there, degrees: rounder ones read as a curve.
    /// </summary>
    private const double Corner = 30;

    /// <summary>
    /// How far a stitch may cut across a curve, µm: a quarter of the thread's width does not show. Smaller crowds the
    /// penetrations of a tight curve.
    /// </summary>
    private const double Sagitta = 100;

    /// <summary>In a tight curve stitches are not made shorter than this, µm. Common practice, no source.</summary>
    private const double ShortestOnCurve = 800;

    /// <summary>Curvature is the turn within this length, µm: a flattened curve turns at its vertices only.</summary>
    private const double Window = 1500;

    /// <summary>How closely the bend of a line is looked at, µm: well below the window.</summary>
    private const double Step = 250;

    /// <summary>Rounding of sums, in stitches: a line of exactly four stitches has four.</summary>
    private const double Whole = 1e-6;

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

    /// <summary>
    /// Places lie so that a stitch is as long as the line's bend allows there: equally far apart when distance is
    /// measured in stitches that each place would have.
    /// </summary>
    private static void AddStretch(ReadOnlySpan<Point> points, double longest, ImmutableArray<Point>.Builder places)
    {
        var (lengths, turns) = Measured(points);
        var count = Math.Max(1, (int)Math.Ceiling(lengths[^1] / Step));
        var stitches = new double[count + 1];
        for (var i = 1; i <= count; i++)
        {
            var middle = lengths[^1] * (i - 0.5) / count;
            stitches[i] = stitches[i - 1] + (lengths[^1] / count / Allowed(lengths, turns, middle, longest));
        }
        var wanted = Math.Max(1, (int)Math.Ceiling(stitches[^1] - Whole));
        for (int k = 1, i = 0; k <= wanted; k++)
        {
            var target = stitches[^1] * k / wanted;
            while (i < count - 1 && stitches[i + 1] < target)
                i++;
            var share = (target - stitches[i]) / (stitches[i + 1] - stitches[i]);
            places.Add(k == wanted ? points[^1] : At(points, lengths, lengths[^1] * (i + share) / count));
        }
    }

    /// <summary>
    /// Longest stitch that keeps to the line there: its sagitta is length² / 8 times the line's curvature.
    /// </summary>
    private static double Allowed(double[] lengths, double[] turns, double along, double longest)
    {
        var turned =
            TurnedUntil(lengths, turns, along + (Window / 2)) - TurnedUntil(lengths, turns, along - (Window / 2));
        return turned <= 0
            ? longest
            : Math.Clamp(Math.Sqrt(8 * Sagitta * Window / turned), Math.Min(ShortestOnCurve, longest), longest);
    }

    /// <summary>Radians, all turns of the line up to a place added up.</summary>
    private static double TurnedUntil(double[] lengths, double[] turns, double along)
    {
        var i = Array.BinarySearch(lengths, along);
        i = i >= 0 ? i : ~i - 1;
        return i < 0 ? 0 : turns[Math.Min(i, turns.Length - 1)];
    }

    private static (double[] Lengths, double[] Turns) Measured(ReadOnlySpan<Point> points)
    {
        var (lengths, turns) = (new double[points.Length], new double[points.Length]);
        for (var i = 1; i < points.Length; i++)
        {
            lengths[i] = lengths[i - 1] + points[i - 1].DistanceTo(points[i]);
            turns[i] =
                turns[i - 1] + (i < points.Length - 1 ? Math.Abs(Turn(points[i - 1], points[i], points[i + 1])) : 0);
        }
        return (lengths, turns);
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

    internal static bool IsCorner(Point before, Point at, Point after) =>
        Math.Abs(Turn(before, at, after)) > Corner * Math.PI / 180;

    private static double Turn(Point before, Point at, Point after)
    {
        var (a, b) = (Vector.Between(before, at), Vector.Between(at, after));
        return Math.Atan2(Vector.Cross(a, b), Vector.Dot(a, b));
    }
}
