using System.Runtime.CompilerServices;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>Lays stitches on a band of dots.</summary>
internal sealed class StrandPainter(StrandBand band)
{
    private const int FractionBits = 8;

    private readonly int width = band.Width;
    private readonly int height = band.Height;
    private readonly int dotsOfPixel = band.DotsOfPixel;

    private readonly Dot[] dots = new Dot[band.Width * band.Height];

    private readonly StrandStamps stamps = new(band.Scale);

    internal StrandBand Band => band;

    /// <summary>How far from its middle line a strand and its shadow reach, in dots.</summary>
    internal double Reach => (((Strand.Width / 2.0) + Strand.ShadowReach) * band.Scale) + 1;

    internal Span<Dot> Row(int y) => dots.AsSpan(y * width, width);

    /// <param name="top">The band's first row.</param>
    internal void Lay(in PlacedStitch stitch, int top)
    {
        var from = InDots(stitch.From);
        // Shifts and masks round down, on the left of the picture, too.
        var (column, row) = (from.X >> FractionBits, (from.Y >> FractionBits) - top);
        var hole = new Point(from.X & (Painter.Fraction - 1), from.Y & (Painter.Fraction - 1));
        var stamp = stamps.Of(InDots(stitch.To) - from, hole);
        // The thread first: what it covers has no need of its shadow.
        Cover(stamp, stitch.Ink.Dots, column, row);
        foreach (var run in stamp.Shaded)
            Shade(On(run, column, row, out _), stitch.Ink.Thread);
    }

    private void Cover(in StrandStamp stamp, ReadOnlySpan<Dot> ink, int column, int row)
    {
        var next = 0;
        foreach (var run in stamp.Covered)
        {
            var covered = On(run, column, row, out var skipped);
            var shades = stamp.Shades.Slice(next + skipped, covered.Length);
            for (var i = 0; i < covered.Length; i++)
                covered[i] = ink[shades[i]];
            next += run.Count;
        }
    }

    private static void Shade(Span<Dot> dots, byte thread)
    {
        foreach (ref var dot in dots)
            if (dot.Thread != thread)
                dot = dot.Shaded(thread);
    }

    /// <summary>What lies on the band.</summary>
    /// <param name="skipped">How many dots lie left of it.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Span<Dot> On(DotRun run, int column, int row, out int skipped)
    {
        var (y, first) = (row + run.Row, column + run.First);
        var (left, right) = (Math.Max(0, first), Math.Min(width, first + run.Count));
        var isOn = y >= 0 && y < height && left < right;
        skipped = isOn ? left - first : 0;
        return isOn ? dots.AsSpan((y * width) + left, right - left) : [];
    }

    /// <summary>In 256ths of a dot.</summary>
    private Point InDots(Point place) => new(place.X * dotsOfPixel, place.Y * dotsOfPixel);
}

/// <summary>Dots that thread is laid on at once.</summary>
/// <param name="DotsOfPixel">Along its side.</param>
/// <param name="Scale">Dots of a micrometre.</param>
internal readonly record struct StrandBand(int Width, int Height, int DotsOfPixel, double Scale);
