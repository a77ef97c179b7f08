using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>A picture in pixels: three bytes each, rows from the top.</summary>
internal sealed record Raster(int Width, int Height, int PixelsPerMetre, byte[] Pixels)
{
    /// <summary>A picture as high as asked for.</summary>
    internal static Raster Of(Picture picture, int height)
    {
        var width = Math.Max(1, (int)(((long)picture.Width * height * 2 + picture.Height) / (2L * picture.Height)));
        var scale = new PixelScale(height, picture.Height);
        var pixels = new byte[width * height * 3];
        Array.Fill(pixels, byte.MaxValue);
        var painter = new Painter(width, height, pixels);
        foreach (var item in picture.Items)
        {
            switch (item)
            {
                case PaintedArea area:
                    foreach (var outline in area.Outlines)
                        painter.Add([.. outline.Select(scale.Of)]);
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
                case PaintedThread thread:
                    Pen.Draw(painter, thread.Lines, scale, PaintedThread.Width);
                    painter.Paint(thread.Shade, 100);
                    Pen.Draw(painter, thread.Lines, scale, PaintedThread.CoreWidth);
                    painter.Paint(thread.Colour, 100);
                    break;
                default:
                    throw new InvalidOperationException($"{item.GetType().Name} cannot be drawn.");
            }
        }
        return new(width, height, (int)((long)height * 1000 * Units.Millimetre / picture.Height), pixels);
    }
}

/// <summary>From micrometres of a page to 256ths of a pixel.</summary>
internal readonly record struct PixelScale(int Pixels, int Micrometres)
{
    internal Point Of(Point point) => new(Of(point.X), Of(point.Y));

    internal int Of(int length) => (int)Math.Floor((double)length * Pixels * Painter.Fraction / Micrometres + 0.5);
}
