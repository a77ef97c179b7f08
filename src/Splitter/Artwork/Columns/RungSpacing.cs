using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>
/// Lays a track's rungs out evenly. Progress is counted as the way of both edges together, so that each edge's own way
/// never runs backwards; a moving mean of it takes out the jitter of the outline's points and spreads a bend's turn
/// over its neighbourhood, and cannot make rungs cross, since a mean of rising values rises.
/// </summary>
internal sealed class RungSpacing
{
    /// <summary>Half the length over which the mean is taken, in mean widths of the column.</summary>
    private const double MeanReach = 0.5;

    /// <summary>
    /// Distance of rungs before thinning: this share of the mean width, but not outside the two bounds, µm.
    /// </summary>
    private const double SpacingShare = 0.15;

    private const double LeastSpacing = 100;
    private const double LargestSpacing = 500;

    /// <summary>Outline vertices with a sharper turn than this get a rung of their own, radians (15 degrees).</summary>
    private const double OwnRung = 15 * Math.PI / 180;

    /// <summary>How far to both sides an edge's direction is measured, in mean widths.</summary>
    private const double TangentReach = 0.2;

    /// <summary>
    /// The furthest that a rung's ends move to stand square, in mean widths: about as far as outline points lie apart.
    /// </summary>
    private const double SquaringReach = 0.1;

    /// <summary>The squared sum of two unit directions below which there is no square between them.</summary>
    private const double LeastTangents = 1;

    private readonly Track track;
    private readonly double[] leftWay;
    private readonly double[] rightWay;
    private readonly List<double> progress = [];
    private readonly List<double> leftAt = [];

    /// <summary>The integral of <see cref="leftAt"/> over <see cref="progress"/>.</summary>
    private readonly List<double> sums = [0];
    private readonly double start;
    private readonly double end;

    /// <summary>Between the rungs that were laid by rule; only there is the mean taken.</summary>
    private readonly (double From, double To) core;
    private readonly double width;

    private RungSpacing(Track track)
    {
        this.track = track;
        leftWay = Ways(track.Left);
        rightWay = Ways(track.Right);
        var total = leftWay[^1] + rightWay[^1];
        width = Enumerable.Range(0, track.Count).Average(i => track[i].Width);
        var squared = Squared();
        // A closed column's neighbourhood runs on over its start.
        foreach (var lap in track.Closed ? [-1, 0, 1] : new[] { 0 })
        {
            for (var i = 0; i < track.Count; i++)
            {
                var at = leftWay[track.Rungs[i].Left] + rightWay[track.Rungs[i].Right] + (lap * total);
                if (progress.Count > 0 && at <= progress[^1])
                    continue;
                progress.Add(at);
                leftAt.Add(squared[i] + (lap * leftWay[^1]));
                if (progress.Count > 1)
                    sums.Add(sums[^1] + ((progress[^1] - progress[^2]) * (leftAt[^1] + leftAt[^2]) / 2));
            }
        }
        (start, end) = (0, total);
        core = (ProgressAt(track.LaidAtStart), ProgressAt(track.Count - 1 - track.LaidAtEnd));
    }

    internal static Column Even(Track track)
    {
        var spacing = new RungSpacing(track);
        return new Column([.. new RungThinning(spacing.Places().Select(at => (at, spacing.RungAt(at)))).Kept()]);
    }

    private static double[] Ways(IReadOnlyList<Point> points)
    {
        var ways = new double[points.Count];
        for (var i = 1; i < points.Count; i++)
            ways[i] = ways[i - 1] + points[i - 1].DistanceTo(points[i]);
        return ways;
    }

    /// <summary>
    /// The left edge's way at each rung once it is turned until it meets both edges at the same angle, as a rung across
    /// a centre line does: facing points alone stand askew by up to the distance of the outline's points.
    /// </summary>
    private double[] Squared()
    {
        double Left(int i) => leftWay[track.Rungs[i].Left];
        var squared = new double[track.Count];
        var (first, last) = (track.LaidAtStart, track.Count - 1 - track.LaidAtEnd);
        for (var i = 0; i < track.Count; i++)
        {
            squared[i] = Left(i);
            // Rungs laid by rule stay, and so do those at the outline's own ends.
            if (i < first || i > last || i == 0 || i == track.Count - 1)
                continue;
            squared[i] += Askew(i);
            // Neither edge may run backwards: from the rung before, and to the next one that stays.
            var stays = i == last ? i + 1 : track.Count - 1;
            var (gone, ahead) = (ProgressAt(i) - ProgressAt(i - 1), ProgressAt(stays) - ProgressAt(i));
            squared[i] = Math.Clamp(squared[i], squared[i - 1], squared[i - 1] + gone);
            squared[i] = Math.Clamp(squared[i], Left(stays) - ahead, Left(stays));
        }
        return squared;
    }

    /// <summary>How far a rung's left end must move on, and its right end back, to stand square; µm.</summary>
    private double Askew(int rung)
    {
        var (left, right) = track.Rungs[rung];
        var tangents = Tangent(track.Left, leftWay, leftWay[left]) + Tangent(track.Right, rightWay, rightWay[right]);
        var square = Vector.Dot(tangents, tangents);
        var across = Vector.Between(track[rung].Left, track[rung].Right);
        return square < LeastTangents
            ? 0
            : Math.Clamp(Vector.Dot(across, tangents) / square, -SquaringReach * width, SquaringReach * width);
    }

    private Vector Tangent(IReadOnlyList<Point> edge, double[] ways, double at)
    {
        var (from, to) = (at - (TangentReach * width), at + (TangentReach * width));
        if (!track.Closed)
            (from, to) = (Math.Max(from, 0), Math.Min(to, ways[^1]));
        var tangent = Vector.Between(On(edge, ways, from), On(edge, ways, to));
        return tangent.Length > 0 ? tangent.Unit : tangent;
    }

    private double ProgressAt(int rung) => leftWay[track.Rungs[rung].Left] + rightWay[track.Rungs[rung].Right];

    private IEnumerable<double> Places()
    {
        // Progress counts both edges, hence twice the spacing.
        var parts = Math.Max(
            1,
            (int)Math.Ceiling((end - start) / (2 * Math.Clamp(SpacingShare * width, LeastSpacing, LargestSpacing)))
        );
        var places = Enumerable.Range(0, parts + 1).Select(i => start + ((end - start) * i / parts)).ToList();
        places.AddRange(Corners(track.Left).Select(i => Place(leftWay[i], SmoothLeft)));
        places.AddRange(Corners(track.Right).Select(i => Place(rightWay[i], at => at - SmoothLeft(at))));
        return places.Order();
    }

    private static IEnumerable<int> Corners(IReadOnlyList<Point> edge)
    {
        for (var i = 1; i < edge.Count - 1; i++)
        {
            var (before, after) = (Vector.Between(edge[i - 1], edge[i]), Vector.Between(edge[i], edge[i + 1]));
            if (Math.Abs(Math.Atan2(Vector.Cross(before, after), Vector.Dot(before, after))) > OwnRung)
                yield return i;
        }
    }

    /// <summary>The progress at which an edge's way reaches a value.</summary>
    private double Place(double way, Func<double, double> edge)
    {
        double low = start,
            high = end;
        while (high - low > 0.5)
            (low, high) = edge((low + high) / 2) < way ? ((low + high) / 2, high) : (low, (low + high) / 2);
        return (low + high) / 2;
    }

    private double SmoothLeft(double at)
    {
        var reach = 2 * MeanReach * width;
        if (!track.Closed)
            reach = Math.Min(reach, Math.Min(at - core.From, core.To - at));
        return reach < 1 ? LeftAt(at) : (Sum(at + reach) - Sum(at - reach)) / (2 * reach);
    }

    private double LeftAt(double at)
    {
        var i = Segment(at);
        var share = (at - progress[i]) / (progress[i + 1] - progress[i]);
        return leftAt[i] + ((leftAt[i + 1] - leftAt[i]) * share);
    }

    private double Sum(double at)
    {
        var i = Segment(at);
        return sums[i] + ((at - progress[i]) * (leftAt[i] + LeftAt(at)) / 2);
    }

    private int Segment(double at)
    {
        var i = progress.BinarySearch(at);
        return Math.Clamp(i >= 0 ? i : ~i - 1, 0, progress.Count - 2);
    }

    private Rung RungAt(double at)
    {
        var left = SmoothLeft(at);
        return new(On(track.Left, leftWay, left), On(track.Right, rightWay, at - left));
    }

    private Point On(IReadOnlyList<Point> edge, double[] ways, double way)
    {
        // All rungs of a fan stand on one point.
        if (ways[^1] == 0)
            return edge[0];
        if (track.Closed)
            way -= Math.Floor(way / ways[^1]) * ways[^1];
        var i = Array.BinarySearch(ways, way);
        i = Math.Clamp(i >= 0 ? i : ~i - 1, 0, edge.Count - 2);
        var length = ways[i + 1] - ways[i];
        return length == 0 ? edge[i] : edge[i].Towards(edge[i + 1], Math.Clamp((way - ways[i]) / length, 0, 1));
    }
}
