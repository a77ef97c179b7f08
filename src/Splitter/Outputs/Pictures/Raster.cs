using System.Buffers;
using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Pictures.Strands;

namespace Splitter.Outputs.Pictures;

/// <summary>A picture in pixels: three bytes each, rows from the top.</summary>
/// <param name="rented">Room for them, which goes back when the picture is no longer needed.</param>
internal sealed class Raster(int width, int height, int pixelsPerMetre, byte[] rented) : IDisposable
{
    private byte[] lent = rented;

    internal int Width => width;
    internal int Height => height;
    internal int PixelsPerMetre => pixelsPerMetre;
    internal Span<byte> Pixels => lent.AsSpan(0, width * height * 3);

    /// <summary>Once is enough: returned twice, it would be lent to two pictures at a time.</summary>
    public void Dispose()
    {
        ArrayPool<byte>.Shared.Return(lent);
        lent = [];
    }

    /// <summary>A picture as high as asked for.</summary>
    /// <param name="painters">Of thread, if there are other pictures.</param>
    internal static Raster Of(Picture picture, int height, StrandPainters? painters = null)
    {
        var width = Math.Max(1, (int)(((long)picture.Width * height * 2 + picture.Height) / (2L * picture.Height)));
        var scale = new PixelScale(height, picture.Height);
        var pixels = ArrayPool<byte>.Shared.Rent(width * height * 3);
        pixels.AsSpan(0, width * height * 3).Fill(byte.MaxValue);
        var painter = new Painter(width, height, pixels);
        var threads = new List<PaintedThread>();
        foreach (var item in picture.Items)
        {
            if (item is PaintedThread thread)
            {
                threads.Add(thread);
                continue;
            }
            Sew();
            switch (item)
            {
                case PaintedCloth cloth:
                    Weave.Paint(painter, scale, cloth);
                    break;
                case PaintedArea area:
                    painter.Add(area.Outlines.Select(outline => outline.Select(scale.Of).ToImmutableArray()));
                    painter.Paint(area.Colour, area.Opacity);
                    break;
                case PaintedLines lines:
                    Pen.Draw(painter, lines.Lines, scale, lines.Width);
                    painter.Paint(lines.Colour, lines.Opacity);
                    break;
                case PaintedText text:
                    Pen.Draw(painter, StrokeFont.Set(text.Text, text.At, text.Height), scale, text.Pen);
                    painter.Paint(text.Colour, text.Opacity);
                    break;
                default:
                    throw new InvalidOperationException($"{item.GetType().Name} cannot be drawn.");
            }
        }
        Sew();
        return new(width, height, (int)((long)height * 1000 * Units.Millimetre / picture.Height), pixels);

        // One sewing on another at once: pixels take the mean of all their dots only when all thread lies.
        void Sew()
        {
            if (threads.Count > 0)
                StrandLayer.Paint(width, height, pixels, scale, threads, painters ?? new());
            threads.Clear();
        }
    }

    /// <summary>
    /// Whole pixels of a millimetre, so that rows of stitches, which lie on tenths of a millimetre, and pixels do not
    /// beat against each other.
    /// </summary>
    internal static Raster InTrueScale(Picture picture, int pixelsOfMillimetre, StrandPainters? painters = null) =>
        Of(picture, (int)((long)picture.Height * pixelsOfMillimetre / Units.Millimetre), painters);

    /// <summary>Smaller: each pixel the mean of so many by so many.</summary>
    internal Raster Reduced(int by)
    {
        var (width, height) = (Width / by, Height / by);
        var all = Pixels;
        var pixels = ArrayPool<byte>.Shared.Rent(width * height * 3);
        for (var y = 0; y < height; y++)
        for (var x = 0; x < width * 3; x++)
        {
            var sum = by * by / 2;
            for (var down = 0; down < by; down++)
            for (var right = 0; right < by; right++)
                sum += all[(((((y * by) + down) * Width) + ((x / 3) * by) + right) * 3) + (x % 3)];
            pixels[(y * width * 3) + x] = (byte)(sum / (by * by));
        }
        return new(width, height, PixelsPerMetre / by, pixels);
    }
}

/// <summary>From micrometres of a page to 256ths of a pixel.</summary>
internal readonly record struct PixelScale(int Pixels, int Micrometres)
{
    internal Point Of(Point point) => new(Of(point.X), Of(point.Y));

    internal int Of(int length) => (int)Math.Floor((double)length * Pixels * Painter.Fraction / Micrometres + 0.5);
}
