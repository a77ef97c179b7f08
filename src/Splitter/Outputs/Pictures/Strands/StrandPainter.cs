namespace Splitter.Outputs.Pictures.Strands;

/// <summary>
/// Lays strands on a band of dots, several to a pixel. Sums, products, quotients and square roots alone, which every
/// machine rounds alike.
/// </summary>
/// <param name="scale">Dots of a micrometre.</param>
internal sealed class StrandPainter(int width, int height, double scale)
{
    private readonly double radius = Strand.Width / 2.0 * scale;
    private readonly double dip = Strand.Dip * scale;
    private readonly double shadowX = -ThreadLight.FromX * Strand.ShadowReach * scale;
    private readonly double shadowY = -ThreadLight.FromY * Strand.ShadowReach * scale;

    /// <summary>Which thread last touched a dot: it shades neither itself nor anything twice.</summary>
    private readonly int[] touched = new int[width * height];

    /// <summary>What each shade of a channel becomes in the shadow of a thread.</summary>
    private static readonly byte[] Shadowed =
    [
        .. Enumerable.Range(0, 256).Select(shade => new Colour((byte)shade, 0, 0).Mixed(default, Strand.Shadow).Red),
    ];

    internal Colour[] Dots { get; } = new Colour[width * height];

    /// <summary>How far from its middle line a strand and its shadow reach, in dots.</summary>
    internal double Reach => radius + (Strand.ShadowReach * scale) + 1;

    /// <summary>Before another band.</summary>
    internal void Forget() => Array.Clear(touched);

    /// <param name="top">The band's first row.</param>
    internal void Lay(in LaidStrand strand, int top)
    {
        Scan(strand, (strand.From.X + shadowX, strand.From.Y + shadowY - top), isShadow: true);
        Scan(strand, (strand.From.X, strand.From.Y - top), isShadow: false);
    }

    private void Scan(in LaidStrand strand, (double X, double Y) from, bool isShadow)
    {
        var (x, y) = strand.Along;
        var end = from.Y + (y * strand.Length);
        var first = Math.Max(0, (int)Math.Ceiling(Math.Min(from.Y, end) - radius - 0.5));
        var last = Math.Min(height - 1, (int)Math.Floor(Math.Max(from.Y, end) + radius - 0.5));
        for (var row = first; row <= last; row++)
        {
            // A dot off by (dx, dy) from the hole lies x dx + y dy along the stitch and x dy - y dx across it.
            var down = row + 0.5 - from.Y;
            var (left, right) = Narrowed((-from.X, width - from.X), -y, down * x, -radius, radius);
            (left, right) = Narrowed((left, right), x, down * y, -radius, strand.Length + radius);
            var start = Math.Max(0, (int)Math.Ceiling(left + from.X - 0.5));
            var stop = Math.Min(width - 1, (int)Math.Floor(right + from.X - 0.5));
            if (isShadow)
                Shade(strand, (row * width) + start, stop - start + 1, start + 0.5 - from.X, down);
            else
                Draw(strand, (row * width) + start, stop - start + 1, start + 0.5 - from.X, down);
        }
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

    private void Shade(in LaidStrand strand, int first, int count, double x, double y)
    {
        if (count <= 0)
            return;
        var (thread, length, along, across) = (strand.Thread, strand.Length, strand.Along, strand.Across);
        var dots = Dots.AsSpan(first, count);
        var last = touched.AsSpan(first, count);
        for (var i = 0; i < dots.Length; i++, x++)
        {
            if (last[i] == thread)
                continue;
            var there = (x * along.X) + (y * along.Y);
            if ((there < 0 || there > length) && IsPastEnd(there, (x * across.X) + (y * across.Y), length))
                continue;
            last[i] = thread;
            dots[i] = new(Shadowed[dots[i].Red], Shadowed[dots[i].Green], Shadowed[dots[i].Blue]);
        }
    }

    private void Draw(in LaidStrand strand, int first, int count, double x, double y)
    {
        if (count <= 0)
            return;
        var (thread, length, step, stepAcross) = (strand.Thread, strand.Length, strand.Along.X, strand.Across.X);
        var along = (x * step) + (y * strand.Along.Y);
        var across = (x * stepAcross) + (y * strand.Across.Y);
        var slope = Math.Min(dip, length * Strand.MostDip);
        var full = strand.Ink.At(StrandInk.Down - 1);
        var shades = StrandInk.Across / (2 * radius);
        var dots = Dots.AsSpan(first, count);
        var last = touched.AsSpan(first, count);
        for (var i = 0; i < dots.Length; i++, along += step, across += stepAcross)
        {
            if ((along < 0 || along > length) && IsPastEnd(along, across, length))
                continue;
            var shade = Math.Clamp((int)((across + radius) * shades), 0, StrandInk.Across - 1);
            last[i] = thread;
            dots[i] =
                along >= slope && along <= length - slope
                    ? full[shade]
                    : strand.Ink.At(Down(along, length, slope))[shade];
        }
    }

    private static int Down(double along, double length, double slope)
    {
        var toHole = Math.Max(0, Math.Min(along, length - along));
        return toHole >= slope ? StrandInk.Down - 1 : (int)(toHole * StrandInk.Down / slope);
    }

    /// <summary>Its ends are round.</summary>
    private bool IsPastEnd(double along, double across, double length)
    {
        var past = Math.Max(-along, along - length);
        return (past * past) + (across * across) > radius * radius;
    }
}
