using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>
/// Thread on the pixels of a picture: strands are laid in sewing order on dots finer than the pixels, a band of rows
/// after the other, and each pixel takes the mean of its dots. So neither cloth nor light leaks through edges that
/// meet.
/// </summary>
internal sealed class StrandLayer
{
    /// <summary>Dots of a millimetre at least, so that a thread is four wide; and dots of a pixel's side.</summary>
    private const int FewestDots = 10,
        FewestToPixel = 2,
        MostToPixel = 4;

    private const int PixelsOfBand = 32;

    private readonly int width;
    private readonly int height;
    private readonly byte[] pixels;
    private readonly PixelScale scale;

    /// <summary>Dots along a pixel's side.</summary>
    private readonly int dots;

    private readonly StrandPainter painter;

    /// <summary>Of each sum of a pixel's dots, rounded: dividing is slow.</summary>
    private readonly byte[] means;

    private StrandLayer(int width, int height, byte[] pixels, PixelScale scale)
    {
        (this.width, this.height, this.pixels, this.scale) = (width, height, pixels, scale);
        var pixelsOfMillimetre = (double)scale.Pixels * Units.Millimetre / scale.Micrometres;
        dots = (int)Math.Clamp(Math.Ceiling(FewestDots / pixelsOfMillimetre), FewestToPixel, MostToPixel);
        var all = dots * dots;
        means = [.. Enumerable.Range(0, (all * byte.MaxValue) + 1).Select(sum => (byte)((sum + (all / 2)) / all))];
        painter = new(width * dots, PixelsOfBand * dots, pixelsOfMillimetre * dots / Units.Millimetre);
    }

    internal static void Paint(
        int width,
        int height,
        byte[] pixels,
        PixelScale scale,
        IReadOnlyList<PaintedThread> threads
    ) => new StrandLayer(width, height, pixels, scale).Paint(threads);

    private void Paint(IReadOnlyList<PaintedThread> threads)
    {
        var strands = Strands(threads);
        var bands = new List<int>[(height + PixelsOfBand - 1) / PixelsOfBand];
        for (var i = 0; i < strands.Length; i++)
        {
            var (top, bottom) = strands[i].Rows(painter.Reach);
            var last = Math.Min(bands.Length - 1, (int)Math.Floor(bottom / (PixelsOfBand * dots)));
            for (var band = Math.Max(0, (int)Math.Floor(top / (PixelsOfBand * dots))); band <= last; band++)
                (bands[band] ??= []).Add(i);
        }
        foreach (var (band, laid) in bands.Index().Where(b => b.Item is not null))
        {
            var first = band * PixelsOfBand;
            var rows = Math.Min(PixelsOfBand, height - first);
            painter.Forget();
            Spread(first, rows);
            foreach (var i in laid)
                painter.Lay(strands[i], first * dots);
            Gather(first, rows);
        }
    }

    private ImmutableArray<LaidStrand> Strands(IReadOnlyList<PaintedThread> threads)
    {
        var strands = ImmutableArray.CreateBuilder<LaidStrand>();
        var inks = new Dictionary<(Colour, ThreadLight), StrandInk>();
        var numbers = new Dictionary<Colour, int>();
        foreach (var thread in threads)
        {
            if (!numbers.TryGetValue(thread.Colour, out var number))
                numbers.Add(thread.Colour, number = numbers.Count + 1);
            foreach (var line in thread.Lines)
            foreach (var stretch in LitStretch.Of(line))
            {
                if (!inks.TryGetValue((thread.Colour, stretch.Light), out var ink))
                    inks.Add((thread.Colour, stretch.Light), ink = new(thread.Colour, stretch.Light));
                // A single hole is a dot of thread.
                for (var i = stretch.First; i < Math.Max(stretch.Last, stretch.First + 1); i++)
                    strands.Add(LaidStrand.Of(number, ink, Dot(line[i]), Dot(line[Math.Min(i + 1, stretch.Last)])));
            }
        }
        return strands.ToImmutable();
    }

    private (double X, double Y) Dot(Point point)
    {
        var at = scale.Of(point);
        return ((double)at.X * dots / Painter.Fraction, (double)at.Y * dots / Painter.Fraction);
    }

    /// <summary>What is there already, below the thread.</summary>
    private void Spread(int first, int rows)
    {
        for (var y = 0; y < rows * dots; y++)
        {
            var row = painter.Dots.AsSpan(y * width * dots, width * dots);
            for (var x = 0; x < width; x++)
            {
                var at = (((first + (y / dots)) * width) + x) * 3;
                row.Slice(x * dots, dots).Fill(new(pixels[at], pixels[at + 1], pixels[at + 2]));
            }
        }
    }

    private void Gather(int first, int rows)
    {
        for (var y = 0; y < rows; y++)
        {
            var row = pixels.AsSpan((first + y) * width * 3, width * 3);
            for (var x = 0; x < width; x++)
            {
                var (red, green, blue) = (0, 0, 0);
                for (var down = 0; down < dots; down++)
                    foreach (var dot in painter.Dots.AsSpan((((y * dots) + down) * width * dots) + (x * dots), dots))
                        (red, green, blue) = (red + dot.Red, green + dot.Green, blue + dot.Blue);
                (row[x * 3], row[(x * 3) + 1], row[(x * 3) + 2]) = (means[red], means[green], means[blue]);
            }
        }
    }
}
