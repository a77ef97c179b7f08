using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Tapes;

/// <summary>
/// A stretch of thread that goes one way: a row of a fill, a stitch across a column, a run until it turns back.
/// </summary>
/// <param name="From">Number of the hole that it begins in.</param>
/// <param name="To">Number of the hole that it ends in.</param>
/// <param name="Middle">
/// Half way along the thread, which may lie far from the straight line where rows are curved.
/// </param>
internal readonly record struct Pass(int From, int To, Point Start, Point End, Point Middle)
{
    /// <summary>
    /// A turn sharper than this goes back, as the cosine of its angle (105 degrees): a column's stitches turn by more,
    /// corners of a run by less.
    /// </summary>
    private const double Back = -0.26;

    /// <summary>
    /// The way that thread goes is taken over as much of it, µm: short stitches between rows do not hide a turn.
    /// </summary>
    private const double Recent = 2500;

    /// <summary>
    /// Rows lie no farther apart than this, µm, as those of underlay do: what goes on farther is something else. Common
    /// practice, no source.
    /// </summary>
    internal const double LongestTurn = 3200;

    /// <summary>The share of its length that one stitch of a pass has, when it is that stitch.</summary>
    private const double SingleStitch = 0.6;

    internal Vector Way => Vector.Between(Start, End);

    /// <param name="stitch">Length of one of its stitches, µm.</param>
    internal bool IsMostly(double stitch) => stitch >= SingleStitch * Way.Length;

    /// <summary>All of a thread; each begins in the hole in which the last one ended.</summary>
    internal static ImmutableArray<Pass> Of(ImmutableArray<Point> holes)
    {
        var passes = ImmutableArray.CreateBuilder<Pass>();
        var (first, corner) = (0, 0);
        for (var i = 1; i < holes.Length - 1; i++)
        {
            var isCorner = IsCorner(holes, i);
            if (
                GoesBack(holes, first, i)
                || (isCorner && Length(holes, corner, i) > LongestTurn && Leg(holes, i) > LongestTurn)
            )
            {
                passes.Add(Between(holes, first, i));
                first = i;
            }
            if (isCorner)
                corner = i;
        }
        if (holes.Length > 1)
            passes.Add(Between(holes, first, holes.Length - 1));
        return passes.ToImmutable();
    }

    private static Pass Between(ImmutableArray<Point> holes, int from, int to)
    {
        var (rest, at) = (Length(holes, from, to) / 2, from);
        for (; at + 1 < to && holes[at].DistanceTo(holes[at + 1]) <= rest; at++)
            rest -= holes[at].DistanceTo(holes[at + 1]);
        var stitch = holes[at].DistanceTo(holes[at + 1]);
        var middle = holes[at].Towards(holes[at + 1], stitch > 0 ? rest / stitch : 0);
        return new(from, to, holes[from], holes[to], middle);
    }

    private static bool GoesBack(ImmutableArray<Point> holes, int first, int at)
    {
        var next = Vector.Between(holes[at], holes[at + 1]);
        // A stitch of no length goes nowhere, and many of them leave much to look back over.
        if (next == default)
            return false;
        var way = RecentWay(holes, first, at);
        return Vector.Dot(way, next) < Back * way.Length * next.Length;
    }

    /// <summary>How far the thread goes on straight from a hole, µm.</summary>
    private static double Leg(ImmutableArray<Point> holes, int from)
    {
        var to = from + 1;
        while (to < holes.Length - 1 && !IsCorner(holes, to))
            to++;
        return Length(holes, from, to);
    }

    private static Vector RecentWay(ImmutableArray<Point> holes, int first, int at)
    {
        var (from, length) = (at, 0.0);
        for (; from > first && length < Recent; from--)
            length += holes[from - 1].DistanceTo(holes[from]);
        return Vector.Between(holes[from], holes[at]);
    }

    /// <summary>The stitch to a hole and the one from it differ by more than 45 degrees.</summary>
    private static bool IsCorner(ImmutableArray<Point> holes, int at)
    {
        var (before, after) = (Vector.Between(holes[at - 1], holes[at]), Vector.Between(holes[at], holes[at + 1]));
        return Vector.Dot(before, after) < 0.7 * before.Length * after.Length;
    }

    private static double Length(ImmutableArray<Point> holes, int from, int to)
    {
        var length = 0.0;
        for (var i = from; i < to; i++)
            length += holes[i].DistanceTo(holes[i + 1]);
        return length;
    }

    /// <summary>
    /// How far another pass lies beside this one, seen the way this one goes: to the right is positive. Null when it
    /// does not go back along it.
    /// </summary>
    internal double? Beside(Pass other)
    {
        var (mine, its) = (Way, other.Way);
        var shorter = Math.Min(mine.Length, its.Length);
        if (shorter < Shortest || Vector.Dot(mine, its) > -0.5 * mine.Length * its.Length)
            return null;
        var along = (mine.Unit - its.Unit).Unit;
        var (from, to) = Extent(along);
        var (otherFrom, otherTo) = other.Extent(along);
        if (Math.Min(to, otherTo) - Math.Max(from, otherFrom) < LeastShared * shorter)
            return null;
        return Vector.Cross(along, Vector.Between(Middle, other.Middle));
    }

    /// <summary>Shorter ones tie, µm.</summary>
    private const double Shortest = 400;

    /// <summary>The share of the shorter one that lies beside the other.</summary>
    private const double LeastShared = 0.3;

    private (double From, double To) Extent(Vector along)
    {
        var (a, b) = (Vector.Dot(along, new(Start.X, Start.Y)), Vector.Dot(along, new(End.X, End.Y)));
        return (Math.Min(a, b), Math.Max(a, b));
    }
}
