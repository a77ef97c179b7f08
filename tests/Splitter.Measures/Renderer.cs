using System.Diagnostics;
using SkiaSharp;

namespace Splitter.Measures;

/// <summary>librsvg's command line, a renderer that knows nothing of us.</summary>
public static class Renderer
{
    /// <summary>Whether it is installed.</summary>
    public static bool IsThere { get; } =
        (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator)
            .Any(folder => File.Exists(Path.Combine(folder, "rsvg-convert")));

    /// <summary>Draws an SVG at a resolution that makes it as wide as asked for.</summary>
    public static Painting Draw(string svg, double widthMillimetres, int pixelsPerMillimetre)
    {
        var pixels = (int)Math.Round(widthMillimetres * pixelsPerMillimetre);
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        try
        {
            File.WriteAllText(file, svg);
            using var process = Process.Start(
                new ProcessStartInfo("rsvg-convert", ["--unlimited", "-w", $"{pixels}", "--keep-aspect-ratio", file])
                {
                    RedirectStandardOutput = true,
                    UseShellExecute = false,
                }
            )!;
            using var png = new MemoryStream();
            process.StandardOutput.BaseStream.CopyTo(png);
            process.WaitForExit();
            if (process.ExitCode != 0)
                throw new InvalidOperationException($"rsvg-convert ended with {process.ExitCode}.");
            using var bitmap = SKBitmap.Decode(png.ToArray());
            return new(bitmap.Width, bitmap.Height, bitmap.Pixels);
        }
        finally
        {
            File.Delete(file);
        }
    }
}

/// <summary>A picture row by row.</summary>
public sealed record Painting(int Width, int Height, SKColor[] Pixels)
{
    private const byte HalfOpaque = 128;

    /// <summary>The pixels that are painted.</summary>
    public Mask Painted() => new(Width, Height, [.. Pixels.Select(p => p.Alpha >= HalfOpaque)]);
}

/// <summary>A set of pixels.</summary>
public sealed record Mask(int Width, int Height, bool[] Set)
{
    /// <summary>With every pixel that lies within a distance of one that is set.</summary>
    public Mask Grown(int by)
    {
        // Distance to the nearest pixel of the same row first; then a disc is a stack of rows.
        var distance = new int[Set.Length];
        for (var y = 0; y < Height; y++)
        {
            var (row, last) = (y * Width, -Width);
            for (var x = 0; x < Width; x++)
                distance[row + x] = x - (last = Set[row + x] ? x : last);
            last = 2 * Width;
            for (var x = Width - 1; x >= 0; x--)
                distance[row + x] = Math.Min(distance[row + x], (last = Set[row + x] ? x : last) - x);
        }
        var grown = new bool[Set.Length];
        for (var dy = -by; dy <= by; dy++)
        {
            var half = (int)Math.Sqrt((by * by) - (dy * dy));
            for (var y = Math.Max(0, -dy); y < Math.Min(Height, Height - dy); y++)
            for (var x = 0; x < Width; x++)
                grown[(y * Width) + x] |= distance[((y + dy) * Width) + x] <= half;
        }
        return new(Width, Height, grown);
    }
}
