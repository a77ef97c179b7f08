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

    private StrandLayer(int width, int height, byte[] pixels, PixelScale scale, StrandPainters painters)
    {
        (this.width, this.height, this.pixels, this.scale) = (width, height, pixels, scale);
        var pixelsOfMillimetre = (double)scale.Pixels * Units.Millimetre / scale.Micrometres;
        dots = (int)Math.Clamp(Math.Ceiling(FewestDots / pixelsOfMillimetre), FewestToPixel, MostToPixel);
        var all = dots * dots;
        means = [.. Enumerable.Range(0, (all * byte.MaxValue) + 1).Select(sum => (byte)((sum + (all / 2)) / all))];
        var band = new StrandBand(
            width * dots,
            PixelsOfBand * dots,
            dots,
            pixelsOfMillimetre * dots / Units.Millimetre
        );
        painter = painters.Take(band);
    }

    internal static void Paint(
        int width,
        int height,
        byte[] pixels,
        PixelScale scale,
        IReadOnlyList<PaintedThread> threads,
        StrandPainters painters
    )
    {
        var layer = new StrandLayer(width, height, pixels, scale, painters);
        layer.Paint(threads);
        painters.Return(layer.painter);
    }

    private void Paint(IReadOnlyList<PaintedThread> threads)
    {
        var stitches = Stitches(threads);
        var reach = painter.Reach / dots;
        foreach (var (band, laid) in Bands(stitches, reach).Index().Where(b => b.Item is not null))
        {
            var (left, right) = (width, 0);
            foreach (var i in laid!)
            {
                var (from, to) = (stitches[i].From.X, stitches[i].To.X);
                left = Math.Min(left, PixelAt(Math.Min(from, to), -reach));
                right = Math.Max(right, PixelAt(Math.Max(from, to), reach) + 1);
            }
            (left, right) = (Math.Max(0, left), Math.Min(width, right));
            var first = band * PixelsOfBand;
            var rows = Math.Min(PixelsOfBand, height - first);
            Spread(first, rows, left, right);
            foreach (var i in laid)
                painter.Lay(stitches[i], first * dots);
            Gather(first, rows, left, right);
        }
    }

    /// <summary>In sewing order.</summary>
    private PlacedStitch[] Stitches(IReadOnlyList<PaintedThread> threads)
    {
        // A single hole is a dot of thread.
        var stitches = new PlacedStitch[threads.Sum(t => t.Lines.Sum(line => Math.Max(1, line.Length - 1)))];
        var next = 0;
        var inks = new Dictionary<(Colour, ThreadLight), StrandInk>();
        var numbers = new Dictionary<Colour, byte>();
        foreach (var thread in threads)
        {
            // From the 256th colour on numbers come again: of two that share one neither shades the other.
            if (!numbers.TryGetValue(thread.Colour, out var number))
                numbers.Add(thread.Colour, number = (byte)((numbers.Count % byte.MaxValue) + 1));
            foreach (var (line, lit) in thread.Lines.Zip(thread.Lit))
            foreach (var stretch in lit)
            {
                if (!inks.TryGetValue((thread.Colour, stretch.Light), out var ink))
                    inks.Add((thread.Colour, stretch.Light), ink = new(thread.Colour, stretch.Light, number));
                var from = scale.Of(line[stretch.First]);
                for (var i = stretch.First; i < Math.Max(stretch.Last, stretch.First + 1); i++)
                {
                    var to = scale.Of(line[Math.Min(i + 1, stretch.Last)]);
                    stitches[next++] = new(ink, from, to);
                    from = to;
                }
            }
        }
        return stitches;
    }

    /// <summary>Which stitches touch each band of rows; null for a band that none does.</summary>
    /// <param name="reach">Of a stitch from its middle line, in pixels.</param>
    private List<int>?[] Bands(PlacedStitch[] stitches, double reach)
    {
        var bands = new List<int>?[(height + PixelsOfBand - 1) / PixelsOfBand];
        for (var i = 0; i < stitches.Length; i++)
        {
            var (from, to) = (stitches[i].From.Y, stitches[i].To.Y);
            var first = Math.Max(0, PixelAt(Math.Min(from, to), -reach) / PixelsOfBand);
            var last = Math.Min(height - 1, PixelAt(Math.Max(from, to), reach)) / PixelsOfBand;
            for (var band = first; band <= last; band++)
                (bands[band] ??= []).Add(i);
        }
        return bands;
    }

    private static int PixelAt(int place, double off) => (int)Math.Floor(((double)place / Painter.Fraction) + off);

    /// <summary>What is there already, below the thread.</summary>
    private void Spread(int first, int rows, int left, int right)
    {
        for (var y = 0; y < rows; y++)
        {
            var row = painter.Row(y * dots)[(left * dots)..(right * dots)];
            var below = pixels.AsSpan((((first + y) * width) + left) * 3, (right - left) * 3);
            for (var (x, at) = (0, 0); x < row.Length; x += dots, at += 3)
                foreach (ref var dot in row.Slice(x, dots))
                    dot = new(new(below[at], below[at + 1], below[at + 2]), thread: 0);
            for (var down = 1; down < dots; down++)
                row.CopyTo(painter.Row((y * dots) + down)[(left * dots)..]);
        }
    }

    private void Gather(int first, int rows, int left, int right)
    {
        for (var y = 0; y < rows; y++)
        {
            var row = pixels.AsSpan((first + y) * width * 3, width * 3);
            for (var x = left; x < right; x++)
            {
                // Red and blue at once: sixteen dots leave the green between them room enough.
                var (redAndBlue, green) = (0u, 0u);
                for (var down = 0; down < dots; down++)
                    foreach (var dot in painter.Row((y * dots) + down).Slice(x * dots, dots))
                        (redAndBlue, green) = (redAndBlue + (dot.Bits & 0xff00ff), green + ((dot.Bits >> 8) & 0xff));
                row[x * 3] = means[redAndBlue & 0xffff];
                row[(x * 3) + 1] = means[green];
                row[(x * 3) + 2] = means[redAndBlue >> 16];
            }
        }
    }
}
