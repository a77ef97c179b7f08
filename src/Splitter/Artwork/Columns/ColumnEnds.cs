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

    /// <summary>Ground left bare behind a joint is worth going on for from this share of a square of the column's width.</summary>
    private const double WorthGoingOn = 0.1;

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
    /// Into a joint, until other columns have covered its rungs for the length of an overlap and leave nothing worth
    /// sewing behind it. Where they cover part of a rung, it is shortened to the rest and an overlap.
    /// </summary>
    /// <param name="bare">What others leave of a rung, as shares of it from its left end; null for nothing.</param>
    internal void IntoJoint(Track track, Vector heading, Func<Rung, (double From, double To)?> bare)
    {
        var width = track.Last.Width;
        var march = new March(lines, track.Last, heading, keepsWidth: true);
        var rungs = march.Rungs(LongestReach * width).Select(rung => (Rung: rung, Bare: bare(rung))).ToList();
        double Left((Rung Rung, (double From, double To)? Bare) r) =>
            r.Bare is { } b ? (b.To - b.From) * r.Rung.Width * march.Step : 0;
        var (behind, covered, share) = (rungs.Sum(Left), 0.0, (From: 0.0, To: 1.0));
        foreach (var rung in rungs)
        {
            behind -= Left(rung);
            covered = rung.Bare is null ? covered + march.Step : 0;
            share = rung.Bare ?? share;
            var more = Overlap / rung.Rung.Width;
            track.Lay(
                new(
                    rung.Rung.Left.Towards(rung.Rung.Right, Math.Max(0, share.From - more)),
                    rung.Rung.Left.Towards(rung.Rung.Right, Math.Min(1, share.To + more))
                )
            );
            if (covered >= Overlap && behind < WorthGoingOn * width * width)
                return;
        }
    }

    /// <summary>Rung by rung to where the outline ends; between rungs the edges follow it.</summary>
    private void Taper(Track track, Vector heading, List<int>? cap)
    {
        var (first, last) = (0, (cap?.Count ?? 0) - 1);
        foreach (
            var rung in new March(lines, track.Last, heading, keepsWidth: false).Rungs(LongestCap * track.Last.Width)
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
