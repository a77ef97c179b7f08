using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Stitching.Satins;

/// <summary>The stitches across a column.</summary>
internal static class Zigzag
{
    /// <summary>
    /// Penetrations on the inside of a curve nearer than this, µm, are crowded: some stitches end short of the edge
    /// there. Common practice, no source.
    /// </summary>
    private const double Crowded = 250;

    /// <summary>
    /// A narrower column has no room for shortened stitches, µm: they would fall short of the shortest stitch.
    /// </summary>
    private const double NarrowestShortened = 1500;

    /// <summary>
    /// How far crowded stitches end short of the edge, as shares of the width, in turn: every second one, and where
    /// they are crowded twice as much three of four. Unequal shares, so that the ends make no line of their own.
    /// </summary>
    private static readonly double[][] Shortening =
    [
        [0, 0.2, 0, 0.3],
        [0, 0.3, 0.15, 0.4],
    ];

    /// <summary>
    /// Where the extra penetrations of a split stitch lie in turn, as shares of their distance: no furrow shows.
    /// </summary>
    private static readonly double[] Stagger = [0.5, 0.8, 0.3, 0.65];

    /// <summary>A split keeps this far from the edges, µm, so that the edge stays smooth.</summary>
    internal const double SplitInset = 1500;

    /// <summary>Covers a column from one place to another, either way.</summary>
    /// <param name="spacing">
    /// Distance of penetrations along one edge, µm: stitches follow each other at half of it.
    /// </param>
    /// <param name="pull">How far a stitch reaches past each edge, µm.</param>
    internal static IEnumerable<Stitch> Over(ColumnLine column, double from, double to, double spacing, double pull)
    {
        var count = Math.Max(1, (int)Math.Ceiling(Math.Abs(to - from) / (spacing / 2)));
        var (last, step) = ((Point?)null, Math.Abs(to - from) / count);
        // Both ends of an open end's rung, so that it is square.
        for (var k = column.IsOpenEnd(from) ? -1 : 0; k <= (column.IsOpenEnd(to) ? count + 1 : count); k++)
        {
            var place = from + ((to - from) * Math.Clamp(k, 0, count) / count);
            var (rung, left) = (column.At(place), (k & 1) == 0);
            var point =
                rung.Width < StitchRules.NarrowestSatin
                    ? Tapered(rung, left, step, pull, last)
                    : End(column, place, rung, left, k >> 1, spacing, pull);
            if (last is { } start)
                foreach (var split in Splits(start, point, k))
                    yield return new(split, StitchUse.Satin);
            yield return new(point, StitchUse.Satin);
            last = point;
        }
    }

    /// <summary>
    /// Towards a tip stitches get shorter as the column does, and reach past its edges by less and less; where they
    /// would be shorter than the shortest, a run along the middle closes it with a point.
    /// </summary>
    /// <param name="step">How far on the last stitch ends, µm.</param>
    private static Point Tapered(Rung rung, bool left, double step, double pull, Point? last)
    {
        var middle = rung.Middle;
        var across = rung.Width * (1 + (2 * pull / StitchRules.NarrowestSatin));
        if ((across * across) + (step * step) < (double)StitchRules.Shortest * StitchRules.Shortest)
            return middle;
        var unit = Vector.Between(middle, left ? rung.Left : rung.Right).Unit;
        var point = (unit * (across / 2)).From(middle);
        // The tape's grid may bring two holes nearer together than they are: it is given back.
        for (var more = 0; more <= Units.TapeStep && IsCrowded(point); more += Units.TapeStep / 2)
            point = (unit * ((across / 2) + more)).From(middle);
        return point;

        bool IsCrowded(Point p) => last is { } from && from.OnTape().DistanceTo(p.OnTape()) < StitchRules.Shortest;
    }

    private static Point End(
        ColumnLine column,
        double place,
        Rung rung,
        bool left,
        int turn,
        double spacing,
        double pull
    )
    {
        var (edge, opposite) = left ? (rung.Left, rung.Right) : (rung.Right, rung.Left);
        var (leftAdvance, rightAdvance) = column.Advance(place);
        var distance = spacing * (left ? leftAdvance : rightAdvance);
        if (distance >= Crowded || rung.Width < NarrowestShortened)
            return edge.Towards(opposite, -pull / rung.Width);
        var share = Shortening[distance < Crowded / 2 ? 1 : 0][turn & 3];
        return edge.Towards(opposite, share > 0 ? share : -pull / rung.Width);
    }

    private static IEnumerable<Point> Splits(Point from, Point to, int turn)
    {
        var length = from.DistanceTo(to);
        if (length <= StitchRules.WidestSatin)
            yield break;
        var step = length / Math.Ceiling(length / (StitchRules.WidestSatin - SplitInset));
        for (var at = step * Stagger[turn & 3]; at < length - SplitInset; at += step)
            if (at > SplitInset)
                yield return from.Towards(to, at / length);
    }
}
