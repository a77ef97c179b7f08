using SkiaSharp;

namespace Splitter.Tests.Artwork.Svg;

/// <summary>Two pictures of one size, pixel by pixel; areas as shares of the picture.</summary>
internal readonly record struct PictureDifference(double Differing, double PaintedByFirst, double PaintedBySecond)
{
    /// <summary>
    /// A pixel differs when a channel does by more than this of 255. Both pictures blur edges over one pixel; a shape
    /// moved by a quarter of a pixel stays below, one that is there in one picture only is far above.
    /// </summary>
    private const int Threshold = 64;

    internal static PictureDifference Between(SKBitmap first, SKBitmap second)
    {
        Assert.Equal((first.Width, first.Height), (second.Width, second.Height));
        var (a, b) = (first.Pixels, second.Pixels);
        long differing = 0,
            paintedA = 0,
            paintedB = 0;
        for (var i = 0; i < a.Length; i++)
        {
            paintedA += a[i].Alpha;
            paintedB += b[i].Alpha;
            if (Differ(a[i], b[i]))
                differing++;
        }
        return new((double)differing / a.Length, paintedA / 255.0 / a.Length, paintedB / 255.0 / a.Length);
    }

    /// <summary>The second picture with what differs in red, for a person to look at.</summary>
    internal static SKBitmap Show(SKBitmap first, SKBitmap second)
    {
        var shown = second.Copy();
        var (a, b) = (first.Pixels, second.Pixels);
        shown.Pixels = [.. a.Zip(b, (p, q) => Differ(p, q) ? SKColors.Red : q.WithAlpha((byte)(q.Alpha / 2)))];
        return shown;
    }

    private static bool Differ(SKColor a, SKColor b) =>
        Far(a.Alpha, b.Alpha)
        || Far(a.Red * a.Alpha / 255, b.Red * b.Alpha / 255)
        || Far(a.Green * a.Alpha / 255, b.Green * b.Alpha / 255)
        || Far(a.Blue * a.Alpha / 255, b.Blue * b.Alpha / 255);

    private static bool Far(int a, int b) => Math.Abs(a - b) > Threshold;
}
