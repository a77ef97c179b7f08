using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>
/// Satin columns along a stroke's centre line. Each leg of the line becomes a rectangle, each bend a fan; a point of
/// the stroke lies on the rung through the nearest point of the line, so rungs that reach no further in than the line's
/// centre of curvature still cover all of it and do not cross each other.
/// </summary>
internal static class StrokeColumns
{
    /// <summary>Vertices nearer than this to the one before are dropped, µm: rounding to whole micrometres
    /// would turn shorter legs by degrees, and merging longer ones would make one corner of a tight bend.</summary>
    private const double LeastLeg = 10;

    /// <summary>
    /// A leg shorter than this between two that can have corners is a slip of the pen, µm: one tape step. It would make
    /// one corner two.
    /// </summary>
    private const double Slip = Units.TapeStep;

    /// <summary>
    /// Where the last rung of a round end lies, degrees of the quarter circle: at 90 it would have no length.
    /// </summary>
    private const double LastRungOfCap = 86;

    /// <summary>Rungs of a round end. The quarter circle's chords then cover 98 % of it and more.</summary>
    private const int RungsOfCap = 7;

    /// <summary>The columns that cover what a pen of this width draws; none when it draws nothing.</summary>
    /// <param name="width">Micrometres.</param>
    /// <param name="mitreLimit">SVG's <c>stroke-miterlimit</c>: a longer mitre becomes a bevel.</param>
    internal static ImmutableArray<Column> From(Polyline path, double width, Cap cap, Join join, double mitreLimit)
    {
        var half = width / 2;
        var points = WithoutSlips(Thinned(path.Points), path.IsClosed);
        var closed = path.IsClosed && points.Count >= 4;
        if (points.Count < 2)
            return Dot(points[0], half, cap);
        if (cap == Cap.Square && !closed)
        {
            points[0] = (Vector.Between(points[1], points[0]).Unit * half).From(points[0]);
            points[^1] = (Vector.Between(points[^2], points[^1]).Unit * half).From(points[^1]);
        }

        var rungs = new List<Rung>();
        if (cap == Cap.Round && !closed)
            rungs.AddRange(
                RoundEnd(points[0], Vector.Between(points[1], points[0]).Unit, half).Reverse().Select(Turned)
            );
        rungs.AddRange(new StrokeLegs(points, closed, half, join, mitreLimit).Rungs());
        if (closed)
            rungs.Add(rungs[0]);
        else if (cap == Cap.Round)
            rungs.AddRange(RoundEnd(points[^1], Vector.Between(points[^2], points[^1]).Unit, half));
        return [new Column([.. Distinct(rungs)])];
    }

    private static List<Point> Thinned(ImmutableArray<Point> points)
    {
        var kept = new List<Point> { points[0] };
        foreach (var point in points.Skip(1))
            if (kept[^1].DistanceTo(point) >= LeastLeg)
                kept.Add(point);
        if (kept[^1] != points[^1] && kept.Count > 1)
            kept[^1] = points[^1];
        return kept;
    }

    private static List<Point> WithoutSlips(List<Point> points, bool closed)
    {
        double Leg(int i) => points[i].DistanceTo(points[i + 1]);
        for (var i = points.Count - 2; i >= 0 && points.Count > 4; i--)
        {
            var (before, after) = (i > 0 ? i - 1 : points.Count - 2, i < points.Count - 2 ? i + 1 : 0);
            if (
                Leg(i) >= Slip
                || (!closed && (before > i || after < i))
                || Math.Min(Leg(before), Leg(after)) < StrokeLegs.LegOfACorner
            )
                continue;
            // The end of a closed line goes with its start.
            points.RemoveAt(i < points.Count - 2 || !closed ? i + 1 : i);
        }
        return points;
    }

    /// <summary>A line without length: SVG draws its caps, round or square, and nothing with butt ends.</summary>
    private static ImmutableArray<Column> Dot(Point at, double half, Cap cap)
    {
        if (cap == Cap.Butt)
            return [];
        var right = new Vector(1, 0);
        if (cap == Cap.Square)
            return
            [
                new Column([
                    Across((-right * half).From(at), right, half),
                    Across((right * half).From(at), right, half),
                ]),
            ];
        return
        [
            new Column([
                .. RoundEnd(at, -right, half).Reverse().Select(Turned),
                Across(at, right, half),
                .. RoundEnd(at, right, half),
            ]),
        ];
    }

    /// <summary>Rungs from past the end of a line to the tip of its round cap.</summary>
    private static IEnumerable<Rung> RoundEnd(Point end, Vector along, double half)
    {
        for (var k = 1; k <= RungsOfCap; k++)
        {
            var angle = LastRungOfCap / 180 * Math.PI * k / RungsOfCap;
            yield return Across((along * (half * Math.Sin(angle))).From(end), along, half * Math.Cos(angle));
        }
    }

    private static Rung Across(Point middle, Vector along, double half) =>
        new((along.Left * half).From(middle), (along.Left * -half).From(middle));

    private static Rung Turned(Rung rung) => new(rung.Right, rung.Left);

    private static IEnumerable<Rung> Distinct(List<Rung> rungs)
    {
        for (var i = 0; i < rungs.Count; i++)
            if (i == 0 || rungs[i] != rungs[i - 1])
                yield return rungs[i];
    }
}
