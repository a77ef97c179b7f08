using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Stitching.Density;

namespace Splitter.Checking.Inspecting;

/// <summary>
/// Thread as it lies, in sewing order: each stitch has a shaded edge, a body, and a ridge of light that ends before the
/// holes, where the thread dips into the cloth.
/// </summary>
internal sealed class ThreadPicture(TapePage page)
{
    private const int BodyWidth = 290;
    private const int RidgeWidth = 110;

    /// <summary>How far a ridge moves towards the light at most, µm.</summary>
    private const double RidgeShift = 75;

    /// <summary>From each end of a stitch to its ridge, µm, and at most a share of it.</summary>
    private const double Dip = 350;

    private const double MostDip = 0.3;

    /// <summary>A shorter stitch, µm, takes the light of those beside it and has no ridge: it is no longer than wide.</summary>
    private const int Shortest = 600;

    internal void Draw(ImmutableArray<TapeRun> runs, StepThreads threads)
    {
        foreach (var run in runs)
        {
            var (points, thread) = (page.Lay(run.Points), threads.Steps[run.Step - 1].Colour);
            if (points.Length == 1)
                Paint([points[0], points[0]], new(1), thread);
            for (var (first, last) = (0, 0); first < points.Length - 1; first = last)
            {
                last = EndOfRow(points, first);
                Paint(points[first..(last + 1)], LightOn(points, first, last), thread);
            }
        }
    }

    /// <summary>
    /// What can be painted at once: thread that turns back lies over what went before, and a bend has another light.
    /// </summary>
    private static int EndOfRow(ImmutableArray<Point> points, int first)
    {
        (Point From, Point To)? before = null;
        for (var i = first; i < points.Length - 1; i++)
        {
            var (from, to) = (points[i], points[i + 1]);
            if (from.DistanceTo(to) < Shortest)
                continue;
            if (
                before is { } last
                && (TurnsBack(last, (from, to)) || ThreadLight.Of(last.From, last.To) != ThreadLight.Of(from, to))
            )
                return i;
            before = (from, to);
        }
        return points.Length - 1;
    }

    private static bool TurnsBack((Point From, Point To) one, (Point From, Point To) next)
    {
        var (a, b) = (one.To - one.From, next.To - next.From);
        return ((double)a.X * b.X) + ((double)a.Y * b.Y) < 0;
    }

    /// <summary>That of its first stitch with a direction worth the name.</summary>
    private static ThreadLight LightOn(ImmutableArray<Point> points, int first, int last)
    {
        for (var i = first; i < last; i++)
            if (points[i].DistanceTo(points[i + 1]) >= Shortest)
                return ThreadLight.Of(points[i], points[i + 1]);
        return ThreadLight.Of(points[first], points[last]);
    }

    private void Paint(ImmutableArray<Point> line, ThreadLight light, Colour thread)
    {
        page.Canvas.Line(ThreadGrid.ThreadWidth, light.Shade(thread), 100, line.AsSpan());
        page.Canvas.Line(BodyWidth, light.Body(thread), 100, line.AsSpan());
        ImmutableArray<ImmutableArray<Point>> ridges =
        [
            .. line.Zip(line.Skip(1), (from, to) => (from, to))
                .Where(s => s.from.DistanceTo(s.to) >= Shortest)
                .Select(s => Ridge(s.from, s.to)),
        ];
        if (!ridges.IsEmpty)
            page.Canvas.Lines(RidgeWidth, light.Ridge(thread), 100, ridges);
    }

    private static ImmutableArray<Point> Ridge(Point from, Point to)
    {
        var dip = Math.Min(MostDip, Dip / from.DistanceTo(to));
        var shift = ThreadLight.Towards(from, to, RidgeShift);
        return [from.Towards(to, dip) + shift, from.Towards(to, 1 - dip) + shift];
    }
}
