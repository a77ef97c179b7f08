using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>Carries columns on from their last sound rung: to the outline's end, or into a joint.</summary>
internal sealed class ColumnEnds(InnerTriangles ground, CrossLines lines)
{
    /// <summary>The turn from which on an end has a corner, radians (35 degrees).</summary>
    private const double Corner = 35 * Math.PI / 180;

    /// <summary>An end whose corners' chord is no shorter than this share of the outline between them is cut straight.</summary>
    private const double StraightEnd = 0.97;

    /// <summary>An end is cut straight when it lies no further off square than this, radians (60 degrees).</summary>
    private const double Slant = 60 * Math.PI / 180;

    /// <summary>The outline round an end is no longer than this, in widths of its last rung.</summary>
    private const double LongestCap = 8;

    /// <summary>How far columns run over each other at a joint, µm: about one row spacing more than cloth gives way. Common practice, no source.</summary>
    private const double Overlap = 600;

    /// <summary>Columns run no further into a joint than this, in widths: beyond lies another branch.</summary>
    private const double LongestReach = 3;

    /// <summary>Rungs of an end are this share of its width apart, but not outside the two bounds, µm.</summary>
    private const double StepShare = 0.08;

    private const double LeastStep = 50;
    private const double LargestStep = 250;

    /// <summary>A rung this share longer than the column still reaches out to the outline: no sliver is left beside it.</summary>
    private const double Stretch = 0.12;

    /// <summary>Halvings of the last step, down to a micrometre.</summary>
    private const int Halvings = 8;

    /// <summary>To where the outline ends.</summary>
    /// <param name="last">The facing points of the track's last rung.</param>
    internal void ToOutline(Track track, Facing last, Vector heading)
    {
        var outline = new OutlineCorners(ground);
        var width = track.Last.Width;
        var cap = outline.Chain(last.Left, last.Right, LongestCap * width);
        if (cap is not null)
        {
            var corners = outline.Along(cap, SharpBends.CornerReach * width, Corner);
            if (corners is [var a, var b] && IsStraightEnd(cap, a, b, heading))
            {
                var (from, to) = (cap.IndexOf(a), cap.IndexOf(b));
                track.Add(
                    cap[1..(from + 1)].Select(i => ground.Points[i]),
                    cap[to..^1].AsEnumerable().Reverse().Select(i => ground.Points[i])
                );
                return;
            }
        }
        Advance(track, heading, double.PositiveInfinity, _ => false, clip: false);
    }

    /// <summary>Into a joint, until other columns have covered its rungs for the length of an overlap.</summary>
    internal void IntoJoint(Track track, Vector heading, Func<Rung, bool> isCovered) =>
        Advance(track, heading, LongestReach * track.Last.Width, isCovered, clip: true);

    private bool IsStraightEnd(List<int> cap, int a, int b, Vector heading)
    {
        var between = cap[cap.IndexOf(a)..(cap.IndexOf(b) + 1)];
        var length = Enumerable
            .Range(1, between.Count - 1)
            .Sum(i => ground.Points[between[i - 1]].DistanceTo(ground.Points[between[i]]));
        var chord = Vector.Between(ground.Points[a], ground.Points[b]);
        return chord.Length >= StraightEnd * length && Vector.Dot(chord.Unit.Left, heading) >= Math.Cos(Slant);
    }

    private void Advance(Track track, Vector heading, double furthest, Func<Rung, bool> isCovered, bool clip)
    {
        var last = track.Last;
        var (from, across) = (last.Middle, heading.Left);
        double Along(Point p) => Vector.Dot(Vector.Between(from, p), heading);
        double Aside(Point p) => Vector.Dot(Vector.Between(from, p), across);
        var before = (Low: Aside(last.Right), High: Aside(last.Left));
        var limit = clip ? before : (Low: double.NegativeInfinity, High: double.PositiveInfinity);
        var gone = Math.Max(0, Math.Max(Along(last.Left), Along(last.Right)));
        var step = Math.Clamp(StepShare * last.Width, LeastStep, LargestStep);
        double covered = 0;
        while (gone + step <= furthest)
        {
            if (Span(gone + step) is not { } span)
            {
                // The end lies within this step.
                double near = gone,
                    far = gone + step;
                for (var i = 0; i < Halvings; i++)
                    (near, far) = Span((near + far) / 2) is null ? (near, (near + far) / 2) : ((near + far) / 2, far);
                if (near > gone && Span(near) is { } end)
                    track.Add(RungAt(near, end));
                return;
            }
            gone += step;
            before = span;
            track.Add(RungAt(gone, span));
            covered = isCovered(track.Last) ? covered + step : 0;
            if (covered >= Overlap)
                return;
        }

        Rung RungAt(double at, (double Low, double High) span) =>
            new(((heading * at) + (across * span.High)).From(from), ((heading * at) + (across * span.Low)).From(from));

        (double Low, double High)? Span(double at)
        {
            var found = lines.Spans((heading * at).From(from), across).DefaultIfEmpty().MaxBy(s => Common(s, before));
            if (Common(found, before) <= 0)
                return null;
            var low = found.Low < limit.Low * (1 + Stretch) ? limit.Low : found.Low;
            var high = found.High > limit.High * (1 + Stretch) ? limit.High : found.High;
            return high > low ? (low, high) : null;
        }
    }

    private static double Common((double Low, double High) a, (double Low, double High) b) =>
        Math.Min(a.High, b.High) - Math.Max(a.Low, b.Low);
}
