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
        MostToPixel = 3;

    private const int PixelsOfBand = 32;

    private readonly int width;
    private readonly int height;
    private readonly byte[] pixels;
    private readonly PixelScale scale;

    /// <summary>Dots along a pixel's side.</summary>
    private readonly int dots;

    private readonly StrandPainter painter;

    private readonly StrandInks inks = new();

    /// <summary>How many dots away a shadow lies.</summary>
    private readonly Point shadow;

    /// <summary>Of the dots of each pixel of a row.</summary>
    private readonly ulong[] sums;

    /// <summary>Of each sum of a pixel's dots, rounded: dividing is slow.</summary>
    private readonly byte[] means;

    private StrandLayer(int width, int height, byte[] pixels, PixelScale scale, StrandPainters painters)
    {
        (this.width, this.height, this.pixels, this.scale) = (width, height, pixels, scale);
        var pixelsOfMillimetre = (double)scale.Pixels * Units.Millimetre / scale.Micrometres;
        dots = (int)Math.Clamp(Math.Ceiling(FewestDots / pixelsOfMillimetre), FewestToPixel, MostToPixel);
        var all = dots * dots;
        means = [.. Enumerable.Range(0, (all * byte.MaxValue) + 1).Select(sum => (byte)((sum + (all / 2)) / all))];
        sums = new ulong[width];
        var dotsOfMicrometre = pixelsOfMillimetre * dots / Units.Millimetre;
        var reach = Strand.ShadowReach * dotsOfMicrometre;
        shadow = new(Units.Round(-ThreadLight.FromX * reach), Units.Round(-ThreadLight.FromY * reach));
        painter = painters.Take(new(width * dots, shadow.Y + (PixelsOfBand * dots), dotsOfMicrometre));
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
        // Mostly all at once.
        for (int first = 0, next; first < threads.Count; first = next)
        {
            var layers = 2;
            for (next = first + 1; next < threads.Count; next++)
                if (threads[next].Colour != threads[next - 1].Colour && ++layers > Dot.Layers)
                    break;
            var layer = new StrandLayer(width, height, pixels, scale, painters);
            layer.Paint([.. threads.Skip(first).Take(next - first)]);
            painters.Return(layer.painter);
        }
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
            // All of it lies beside the picture.
            if (left >= right)
                continue;
            var first = band * PixelsOfBand;
            var rows = Math.Min(PixelsOfBand, height - first);
            var all = (left * dots)..(right * dots);
            for (var y = 0; y < shadow.Y + (rows * dots); y++)
                painter.Row(y)[all].Clear();
            foreach (var i in laid)
                painter.Lay(stitches[i], (first * dots) - shadow.Y);
            Gather(first, rows, left, right);
        }
    }

    /// <summary>In sewing order.</summary>
    private PlacedStitch[] Stitches(IReadOnlyList<PaintedThread> threads)
    {
        // A single hole is a dot of thread.
        var stitches = new PlacedStitch[threads.Sum(t => t.Lines.Sum(line => Math.Max(1, line.Length - 1)))];
        var next = 0;
        foreach (var thread in threads)
        foreach (var (line, lit) in thread.Lines.Zip(thread.Lit))
        foreach (var stretch in lit)
        {
            var strand = inks.Next(thread.Colour, stretch.Light);
            var from = OnDots(line[stretch.First]);
            for (var i = stretch.First; i < Math.Max(stretch.Last, stretch.First + 1); i++)
            {
                var to = OnDots(line[Math.Min(i + 1, stretch.Last)]);
                stitches[next++] = new(strand, from, to);
                from = to;
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

    private int PixelAt(int place, double off) => (int)Math.Floor(((double)place / (Painter.Fraction * dots)) + off);

    private Point OnDots(Point hole) => new(scale.Of(hole.X) * dots, scale.Of(hole.Y) * dots);

    private void Gather(int first, int rows, int left, int right)
    {
        var drawn = sums.AsSpan(left, right - left);
        for (var y = 0; y < rows; y++)
        {
            drawn.Clear();
            for (var down = 0; down < dots; down++)
            {
                var row = painter.Row(shadow.Y + (y * dots) + down);
                // The outermost dots are beyond reach, and what lies farther out is not of this band.
                var begin = Math.Min((left * dots) + shadow.X, right * dots);
                StrandShadow.Cast(
                    row[begin..(right * dots)],
                    painter.Row((y * dots) + down)[(begin - shadow.X)..((right * dots) - shadow.X)],
                    inks
                );
                Add(row[(left * dots)..(right * dots)], drawn);
            }
            var at = pixels.AsSpan((((first + y) * width) + left) * 3, drawn.Length * 3);
            foreach (var sum in drawn)
            {
                var (red, green, blue) = StrandInks.Channels(
                    StrandInks.IsThreadAlone(sum) ? sum : StrandInks.With(new(at[0], at[1], at[2]), sum)
                );
                (at[0], at[1], at[2]) = (means[red], means[green], means[blue]);
                at = at[3..];
            }
        }
    }

    private void Add(ReadOnlySpan<Dot> row, Span<ulong> sums)
    {
        var colours = inks.Colours;
        foreach (ref var sum in sums)
        {
            foreach (var dot in row[..dots])
                sum += colours[dot.Colour];
            row = row[dots..];
        }
    }
}
