using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>Lays stitches on a band of dots.</summary>
internal sealed class StrandPainter(StrandBand band)
{
    private const int FractionBits = 8;

    private readonly int width = band.Width;
    private readonly int height = band.Height;

    private readonly Dot[] dots = new Dot[band.Width * band.Height];

    private readonly StrandStamps stamps = new(band.Scale);

    internal StrandBand Band => band;

    /// <summary>How far from its middle line a strand and its shadow reach, in dots.</summary>
    internal double Reach => (((Strand.Width / 2.0) + Strand.ShadowReach) * band.Scale) + 1;

    internal Span<Dot> Row(int y) => dots.AsSpan(y * width, width);

    /// <param name="top">The band's first row.</param>
    internal void Lay(in PlacedStitch stitch, int top)
    {
        var from = stitch.From;
        // Shifts and masks round down, on the left of the picture, too.
        var (column, row) = (from.X >> FractionBits, (from.Y >> FractionBits) - top);
        var hole = new Point(from.X & (Painter.Fraction - 1), from.Y & (Painter.Fraction - 1));
        var stamp = stamps.Of(stitch.To - from, hole);
        var next = 0;
        foreach (var run in stamp.Covered)
        {
            var (y, first) = (row + run.Row, column + run.First);
            var (left, right) = (Math.Max(0, first), Math.Min(width, first + run.Count));
            if ((uint)y < (uint)height && left < right)
                Cover(
                    dots.AsSpan((y * width) + left, right - left),
                    stamp.Shades.Slice(next + left - first, right - left),
                    stitch.Strand
                );
            next += run.Count;
        }
    }

    private static void Cover(Span<Dot> dots, ReadOnlySpan<byte> shades, Dot strand)
    {
        const int Together = 4;
        if (dots.Length < Together)
        {
            for (var i = 0; i < dots.Length; i++)
                dots[i] = new(strand.Bits + shades[i]);
            return;
        }
        var bits = MemoryMarshal.Cast<Dot, uint>(dots);
        var all = Vector128.Create(strand.Bits);
        for (var i = 0; i < bits.Length; i += Together)
        {
            // The last four may be covered twice.
            var at = Math.Min(i, bits.Length - Together);
            var four = Vector128.CreateScalarUnsafe(MemoryMarshal.Read<uint>(shades[at..])).AsByte();
            (Vector128.WidenLower(Vector128.WidenLower(four)) + all).CopyTo(bits[at..]);
        }
    }
}

/// <summary>Dots that thread is laid on at once.</summary>
/// <param name="Scale">Dots of a micrometre.</param>
internal readonly record struct StrandBand(int Width, int Height, double Scale);
