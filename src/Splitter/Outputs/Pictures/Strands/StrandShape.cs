using System.Runtime.InteropServices;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>
/// Which dots a stitch covers, counted from the dot of its first hole. Sums, products, quotients
/// and square roots alone, which every machine rounds alike.
/// </summary>
internal readonly struct StrandShape
{
    private readonly double length;
    private readonly double radius;
    private readonly double slope;

    /// <summary>Unit vector, and one across to the lit side.</summary>
    private readonly (double X, double Y) along;
    private readonly (double X, double Y) across;

    /// <summary>The first hole.</summary>
    private readonly (double X, double Y) hole;

    /// <param name="way">From hole to hole, and where in its dot the first one lies, in 256ths of a dot.</param>
    /// <param name="scale">Dots of a micrometre.</param>
    internal StrandShape(Point way, Point hole, double scale)
    {
        var (x, y) = ((double)way.X / Painter.Fraction, (double)way.Y / Painter.Fraction);
        length = Math.Sqrt((x * x) + (y * y));
        radius = Strand.Width / 2.0 * scale;
        slope = Math.Min(Strand.Dip * scale, length * Strand.MostDip);
        along = length > 0 ? (x / length, y / length) : (1, 0);
        // The light comes from the upper left.
        var lit = (-along.Y * ThreadLight.FromX) + (along.X * ThreadLight.FromY) >= 0 ? 1 : -1;
        across = (-along.Y * lit, along.X * lit);
        this.hole = ((double)hole.X / Painter.Fraction, (double)hole.Y / Painter.Fraction);
    }

    /// <summary>
    /// Adds the dots that it covers, and for each in turn what its shade adds to a <see cref="Dot"/>.
    /// </summary>
    internal void Cover(List<DotRun> runs, List<byte> shades)
    {
        var steps = StrandShades.Across / (2 * radius);
        var (top, bottom) = Rows(hole.Y);
        for (var line = top; line <= bottom; line++)
        {
            var row = Row(line, hole);
            var (first, count, begin) = (row.First, 0, shades.Count);
            CollectionsMarshal.SetCount(shades, begin + row.Count);
            var dots = CollectionsMarshal.AsSpan(shades)[begin..];
            var (x, y) = (row.First + 0.5 - hole.X, line + 0.5 - hole.Y);
            var (far, aside) = ((x * along.X) + (y * along.Y), (x * across.X) + (y * across.Y));
            for (var i = 0; i < row.Count; i++, far += along.X, aside += across.X)
            {
                if (IsPastEnd(far, aside))
                {
                    first += count == 0 ? 1 : 0;
                    continue;
                }
                var shade = Math.Clamp((int)((aside + radius) * steps), 0, StrandShades.Across - 1);
                dots[count++] = (byte)(((Down(far) * StrandShades.Across) + shade) << Dot.Shade);
            }
            CollectionsMarshal.SetCount(shades, begin + count);
            Add(runs, line, first, first + count);
        }
    }

    private static void Add(List<DotRun> runs, int row, int first, int end)
    {
        if (first < end)
            runs.Add(new((short)row, (short)first, (short)(end - first)));
    }

    /// <summary>The first and the last row that it may touch.</summary>
    private (int Top, int Bottom) Rows(double fromY)
    {
        var end = fromY + (along.Y * length);
        return (
            (int)Math.Ceiling(Math.Min(fromY, end) - radius - 0.5),
            (int)Math.Floor(Math.Max(fromY, end) + radius - 0.5)
        );
    }

    /// <summary>Of a row the dots between its sides and, but for the round of its ends, between these.</summary>
    private (int First, int Count) Row(int row, (double X, double Y) from)
    {
        // A dot off by (dx, dy) from the hole lies x dx + y dy along the stitch and x dy - y dx across it.
        var down = row + 0.5 - from.Y;
        var all = (double.NegativeInfinity, double.PositiveInfinity);
        var (left, right) = Narrowed(all, -along.Y, down * along.X, -radius, radius);
        (left, right) = Narrowed((left, right), along.X, down * along.Y, -radius, length + radius);
        var first = (int)Math.Ceiling(left + from.X - 0.5);
        return (first, Math.Max(0, (int)Math.Floor(right + from.X - 0.5) - first + 1));
    }

    /// <summary>Of a stretch of dx, where least &lt;= slope dx + offset &lt;= most.</summary>
    private static (double Left, double Right) Narrowed(
        (double Left, double Right) stretch,
        double slope,
        double offset,
        double least,
        double most
    )
    {
        if (slope == 0)
            return offset < least || offset > most ? (0, -1) : stretch;
        var (one, other) = ((least - offset) / slope, (most - offset) / slope);
        return (Math.Max(stretch.Left, Math.Min(one, other)), Math.Min(stretch.Right, Math.Max(one, other)));
    }

    /// <summary>How far it has come out of a hole.</summary>
    private int Down(double far)
    {
        var toHole = Math.Max(0, Math.Min(far, length - far));
        return toHole >= slope ? StrandShades.Down - 1 : (int)(toHole * StrandShades.Down / slope);
    }

    /// <summary>Its ends are round.</summary>
    private bool IsPastEnd(double far, double aside)
    {
        if (far >= 0 && far <= length)
            return false;
        var past = Math.Max(-far, far - length);
        return (past * past) + (aside * aside) > radius * radius;
    }
}
