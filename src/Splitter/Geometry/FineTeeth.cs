using System.Collections.Immutable;
using Splitter.Geometry.Arrangements;

namespace Splitter.Geometry;

/// <summary>
/// Outlines without the dents and thorns that do not show once they are offset. Teeth finer than a tape's step meet
/// hundreds of others then, and the engine takes minutes and gigabytes to find where.
/// </summary>
internal static class FineTeeth
{
    /// <summary>Sides shorter than this are finer than a tape is, µm.</summary>
    private const int Fine = Units.TapeStep;

    /// <summary>
    /// A ring with no more short sides than this is offset in no time as it is: letters, leaves, coasts.
    /// </summary>
    private const int Few = 2000;

    /// <summary>Vertices that one straight side may stand for at most; it bounds how often each is looked at.</summary>
    private const int MostInDent = 64;

    /// <summary>
    /// The region, for an offset by a distance: where a ring has very many short sides, without dents that are closed
    /// by it (thorns that it takes away, where it is negative).
    /// </summary>
    /// <param name="by">Of the offset, µm.</param>
    /// <param name="tolerance">How far the offset outline may stray for it, µm.</param>
    internal static Region Closed(Region region, double by, double tolerance)
    {
        if (!region.Rings.Any(HasMany))
            return region;
        var lines = new Outlines();
        foreach (var polygon in region.Polygons)
        foreach (var ring in polygon.Rings)
        {
            var sense = Math.Sign(ring.SignedArea) * (ReferenceEquals(ring, polygon.Outer) ? 1 : -1);
            var closed = HasMany(ring)
                ? Closed(ring.Points, sense * Math.Sign(by), Math.Abs(by), tolerance)
                : ring.Points;
            if (closed.Length >= 3)
                lines.Add(new Ring(closed), sense < 0 ? -Winding.OfFirst : Winding.OfFirst);
        }
        return Arrangement.Ground(lines, winding => winding.First > 0);
    }

    private static bool HasMany(Ring ring)
    {
        if (ring.Points.Length <= Few)
            return false;
        var (shorter, before) = (0, ring.Points[^1]);
        foreach (var point in ring.Points)
        {
            if (before.DistanceTo(point) < Fine)
                shorter++;
            before = point;
        }
        return shorter > Few;
    }

    /// <summary>
    /// A straight side bridges a dent that all lies on one side of it. By Pythagoras no place of the side is further
    /// than the tolerance beyond the reach of its ends; and a dent of less ground than a disc of the offset's radius
    /// has no place that is out of reach of its rim. Nor has one that is nowhere wider, along its mouth, than twice the
    /// radius, however deep it is.
    /// </summary>
    /// <param name="side">
    /// 1 where dents lie clockwise of a straight side, as seen with y down; -1 where they do not.
    /// </param>
    private static ImmutableArray<Point> Closed(ImmutableArray<Point> ring, int side, double by, double tolerance)
    {
        var (widest, most) = (Math.Sqrt(8 * tolerance * by), Math.PI * by * by);
        var kept = ImmutableArray.CreateBuilder<Point>();
        for (int from = 0, to; from < ring.Length; from = to)
        {
            kept.Add(ring[from]);
            to = from + 1;
            var (start, twice, outermost) = (ring[from], 0.0, ring[(from + 1) % ring.Length]);
            for (var next = from + 2; next <= Math.Min(from + MostInDent, ring.Length); next++)
            {
                var (before, at) = (ring[next - 1], ring[next % ring.Length]);
                twice += Cross(start, before, at);
                // Whatever lies outside the straight sides to earlier vertices may be bridged to.
                if (side * Cross(start, at, outermost) < 0)
                    continue;
                outermost = at;
                if (
                    at != start
                    && start.DistanceTo(at) <= widest
                    && (Math.Abs(twice) < 2 * most || Width(ring, from, next) < 2 * by)
                )
                    to = IsOneSided(ring, from, next, side) ? next : to;
            }
        }
        return kept.ToImmutable();
    }

    /// <summary>How far a dent reaches along its mouth.</summary>
    private static double Width(ImmutableArray<Point> ring, int from, int to)
    {
        var (start, most, least) = (ring[from], 0.0, 0.0);
        var mouth = Vector.Between(start, ring[to % ring.Length]).Unit;
        for (var i = from + 1; i <= to; i++)
        {
            var along = Vector.Dot(Vector.Between(start, ring[i % ring.Length]), mouth);
            (least, most) = (Math.Min(least, along), Math.Max(most, along));
        }
        return most - least;
    }

    private static bool IsOneSided(ImmutableArray<Point> ring, int from, int to, int side)
    {
        var (start, end) = (ring[from], ring[to % ring.Length]);
        for (var i = from + 1; i < to; i++)
            if (side * Cross(start, end, ring[i]) < 0)
                return false;
        return true;
    }

    /// <summary>Positive where b lies clockwise of a as seen from a place with y down.</summary>
    private static double Cross(Point from, Point a, Point b) =>
        (((double)a.X - from.X) * ((double)b.Y - from.Y)) - (((double)a.Y - from.Y) * ((double)b.X - from.X));
}
