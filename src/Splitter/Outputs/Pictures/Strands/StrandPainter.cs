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
                Shade(strand, row, start, stop, start + 0.5 - from.X, down);
            else
                Draw(strand, row, start, stop, start + 0.5 - from.X, down);
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

    private void Shade(in LaidStrand strand, int row, int start, int stop, double x, double y)
    {
        for (var at = (row * width) + start; at <= (row * width) + stop; at++, x++)
        {
            if (touched[at] == strand.Thread || IsPastEnd(strand, x, y, out _, out _))
                continue;
            touched[at] = strand.Thread;
            Dots[at] = Dots[at].Mixed(new(0, 0, 0), Strand.Shadow);
        }
    }

    private void Draw(in LaidStrand strand, int row, int start, int stop, double x, double y)
    {
        var slope = Math.Min(dip, strand.Length * Strand.MostDip);
        var full = strand.Ink.At(StrandInk.Down - 1);
        var shades = StrandInk.Across / (2 * radius);
        for (var at = (row * width) + start; at <= (row * width) + stop; at++, x++)
        {
            if (IsPastEnd(strand, x, y, out var along, out var across))
                continue;
            var toHole = Math.Max(0, Math.Min(along, strand.Length - along));
            var shade = Math.Clamp((int)((across + radius) * shades), 0, StrandInk.Across - 1);
            touched[at] = strand.Thread;
            Dots[at] = toHole >= slope ? full[shade] : strand.Ink.At((int)(toHole * StrandInk.Down / slope))[shade];
        }
    }

    /// <summary>Its ends are round.</summary>
    private bool IsPastEnd(in LaidStrand strand, double x, double y, out double along, out double across)
    {
        along = (x * strand.Along.X) + (y * strand.Along.Y);
        across = (x * strand.Across.X) + (y * strand.Across.Y);
        var past = Math.Max(-along, along - strand.Length);
        return past > 0 && (past * past) + (across * across) > radius * radius;
    }
}
