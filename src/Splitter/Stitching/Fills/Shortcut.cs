using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Fills;

/// <summary>
/// A way with as few corners as will do: the needle pierces the cloth at every corner, and ways beside a curved outline
/// have one on every row.
/// </summary>
internal static class Shortcut
{
    /// <summary>
    /// How far a way may cut a corner off even where that leads outside, µm: a quarter of a thread's width.
    /// </summary>
    internal const double Straying = 100;

    /// <summary>
    /// How far it may do so where it stays inside, µm: less than the way keeps off the edge, so that it does not show.
    /// </summary>
    private const double StrayingInside = 400;

    /// <summary>
    /// Most corners that are left out one after the other: those of 16 mm, row by row. The effort grows with its
    /// square.
    /// </summary>
    private const int MostLeftOut = 40;

    /// <summary>The corners to go to, the last one included; no stitch between them is too short.</summary>
    /// <param name="way">On the tape's grid, with its start.</param>
    /// <param name="leavesGround">Whether the straight way between two of them, by index, leads outside.</param>
    internal static ImmutableArray<Point> Over(ImmutableArray<Point> way, Func<int, int, bool> leavesGround)
    {
        var (cost, before) = (new double[way.Length], new int[way.Length]);
        for (var to = 1; to < way.Length; to++)
        {
            cost[to] = double.PositiveInfinity;
            for (var at = to - 1; at >= 0 && to - at <= MostLeftOut; at--)
                if (
                    !double.IsInfinity(cost[at])
                    && way[at].DistanceTo(way[to]) >= StitchRules.Shortest
                    // A micrometre astray outweighs a stitch: it is accepted only where stitches would be too short.
                    && cost[at] + 1 + Astray(at, to) is var sum
                    && sum < cost[to]
                )
                    (cost[to], before[to]) = (sum, at);
        }
        // Nowhere a stitch long: the needle drops what crowds it.
        if (double.IsInfinity(cost[^1]))
            return way[1..];
        var kept = ImmutableArray.CreateBuilder<Point>();
        for (var at = way.Length - 1; at > 0; at = before[at])
            kept.Add(way[at]);
        kept.Reverse();
        return kept.ToImmutable();

        // How much further than allowed the corners between lie from the straight way.
        double Astray(int from, int to)
        {
            var (most, sum) = (0.0, 0.0);
            for (var i = from + 1; i < to; i++)
            {
                var off = Away(way[i], way[from], way[to]);
                most = Math.Max(most, off);
                sum += Math.Max(0, off - Straying);
            }
            return sum == 0 || (most <= StrayingInside && !leavesGround(from, to)) ? 0 : sum;
        }
    }

    /// <summary>Distance from a point to the straight way between two others, µm.</summary>
    private static double Away(Point p, Point from, Point to)
    {
        double dx = to.X - from.X,
            dy = to.Y - from.Y,
            px = p.X - from.X,
            py = p.Y - from.Y;
        var share = Math.Clamp(((px * dx) + (py * dy)) / ((dx * dx) + (dy * dy)), 0, 1);
        return new Vector(px - (share * dx), py - (share * dy)).Length;
    }
}
