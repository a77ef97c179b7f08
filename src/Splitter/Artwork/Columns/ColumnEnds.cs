using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>Carries columns on from their last sound rung: to the outline's end, or into a joint.</summary>
internal sealed class ColumnEnds(InnerTriangles ground, CrossLines lines)
{
    /// <summary>The turn from which on an end has a corner, radians (35 degrees).</summary>
    private const double Corner = 35 * Math.PI / 180;

    /// <summary>
    /// An end whose corners' chord is no shorter than this share of the outline between them is cut straight.
    /// </summary>
    private const double StraightEnd = 0.97;

    /// <summary>An end is cut straight when it lies no further off square than this, radians (60 degrees).</summary>
    private const double Slant = 60 * Math.PI / 180;

    /// <summary>The outline round an end is no longer than this, in widths of its last rung.</summary>
    private const double LongestCap = 8;

    /// <summary>A tip is no longer than this, in widths of its last rung: one of a degree is 57 widths long.</summary>
    private const double LongestTip = 60;

    /// <summary>
    /// How far columns run over each other at a joint, µm: about one row spacing more than cloth gives way. Common
    /// practice, no source.
    /// </summary>
    private const double Overlap = 500;

    /// <summary>The same beside a column, µm: stitches reach past their edge by the pull as well.</summary>
    internal const double SideOverlap = 400;

    /// <summary>Columns run no further into a joint than this, in widths: beyond lies another branch.</summary>
    private const double LongestReach = 3;

    /// <summary>
    /// Ground left bare behind a joint gets a column from this share of a square of the ending column's width.
    /// </summary>
    private const double WorthGoingOn = 0.1;

    /// <summary>What rungs into a joint and behind it may lie in; they are no longer than the last sound one.</summary>
    internal static Box Reach(Rung last) =>
        Box.Around([last.Middle]).Grown((int)Math.Ceiling((LongestReach + 1) * last.Width));

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
        Taper(track, heading, cap);
    }

    /// <summary>
    /// Into a joint, until other columns have covered its rungs for the length of an overlap. Where they cover part of
    /// a rung, it is shortened to the rest and an overlap.
    /// </summary>
    /// <param name="bare">What others leave of a rung, as shares of it from its left end; null for nothing.</param>
    internal void IntoJoint(Track track, Vector heading, Func<Rung, (double From, double To)?> bare)
    {
        var march = new March(lines, track.Last, heading, keepsWidth: true);
        var (covered, share, closing) = (0.0, (From: 0.0, To: 1.0), Overlap);
        foreach (var rung in march.Rungs(LongestReach * track.Last.Width))
        {
            var left = bare(rung);
            covered = left is null ? covered + march.Step : 0;
            share = left ?? share;
            // What runs out in a point is closed from its sides.
            closing = left is { } open ? Math.Min(Overlap, (open.To - open.From) * rung.Width) : closing;
            track.Lay(Widened(rung, share));
            if (covered >= closing)
                return;
        }
    }

    /// <summary>
    /// What is bare behind the columns that a column ends on, such as the foot of a K's arm below its leg: a column of
    /// its own each.
    /// </summary>
    /// <param name="first">The column's last rung before the joint.</param>
    internal IEnumerable<Track> Behind(Rung first, Vector heading, Func<Rung, (double From, double To)?> bare)
    {
        var march = new March(lines, first, heading, keepsWidth: true);
        var rungs = march.Rungs(LongestReach * first.Width).Select(rung => (Rung: rung, Bare: bare(rung))).ToList();
        var margin = (int)Math.Ceiling(Overlap / march.Step);
        for (int from = 0, to = 0; from < rungs.Count; from = Math.Max(to, from + 1))
        {
            double area = 0;
            for (to = from; to < rungs.Count && rungs[to].Bare is { } open; to++)
                area += (open.To - open.From) * rungs[to].Rung.Width * march.Step;
            if (area < WorthGoingOn * first.Width * first.Width)
                continue;
            var (start, end) = (Math.Max(0, from - margin), Math.Min(rungs.Count, to + margin));
            var patch = Enumerable
                .Range(start, end - start)
                .Select(i => Widened(rungs[i].Rung, rungs[Math.Clamp(i, from, to - 1)].Bare!.Value))
                .ToList();
            if (patch.Count > 1)
                yield return Track.Of(patch);
        }
    }

    /// <summary>Into the middle of a star, as far as the arm's own ground there goes.</summary>
    internal void IntoStar(Track track, Vector heading, Func<Rung, Rung?> own)
    {
        foreach (
            var rung in new March(lines, track.Last, heading, keepsWidth: false).Rungs(LongestReach * track.Last.Width)
        )
        {
            if (own(rung) is not { } mine)
                return;
            track.Lay(mine);
        }
    }

    private static Rung Widened(Rung rung, (double From, double To) share)
    {
        var more = SideOverlap / rung.Width;
        return rung.Part(Math.Max(0, share.From - more), Math.Min(1, share.To + more));
    }

    /// <summary>Rung by rung to where the outline ends; between rungs the edges follow it.</summary>
    private void Taper(Track track, Vector heading, List<int>? cap)
    {
        var (first, last) = (0, (cap?.Count ?? 0) - 1);
        foreach (
            var rung in new March(lines, track.Last, heading, keepsWidth: false).Rungs(LongestTip * track.Last.Width)
        )
        {
            if (cap is null)
            {
                track.Add(rung);
                continue;
            }
            var left = Nearest(cap, first, last, rung.Left, fromEnd: false);
            var right = Nearest(cap, left, last, rung.Right, fromEnd: true);
            track.Add(
                [.. cap[(first + 1)..Math.Max(first + 1, left)].Select(i => ground.Points[i]), rung.Left],
                [
                    .. cap[Math.Min(right + 1, last)..last].AsEnumerable().Reverse().Select(i => ground.Points[i]),
                    rung.Right,
                ]
            );
            (first, last) = (left, right);
        }
    }

    private int Nearest(List<int> cap, int first, int last, Point to, bool fromEnd)
    {
        var places = Enumerable.Range(first, last - first + 1);
        return (fromEnd ? places.Reverse() : places).MinBy(i => ground.Points[cap[i]].DistanceTo(to));
    }

    private bool IsStraightEnd(List<int> cap, int a, int b, Vector heading)
    {
        var between = cap[cap.IndexOf(a)..(cap.IndexOf(b) + 1)];
        var length = Enumerable
            .Range(1, between.Count - 1)
            .Sum(i => ground.Points[between[i - 1]].DistanceTo(ground.Points[between[i]]));
        var chord = Vector.Between(ground.Points[a], ground.Points[b]);
        return chord.Length >= StraightEnd * length && Vector.Dot(chord.Unit.Left, heading) >= Math.Cos(Slant);
    }
}
