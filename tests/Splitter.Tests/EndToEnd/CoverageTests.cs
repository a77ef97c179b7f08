using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using SkiaSharp;
using Xunit.Abstractions;

namespace Splitter.Tests.EndToEnd;

/// <summary>
/// Every part is decoded from its tape by the tests' own reader, laid back on the drawing by the manifest alone, and drawn
/// 0.4 mm wide; <c>rsvg-convert</c> (librsvg), an independent renderer, draws both the thread and the artwork.
/// </summary>
public sealed class CoverageTests(ITestOutputHelper output)
{
    private const double Covered = 0.95;
    private const double Spilled = 0.03;

    /// <summary>Thread up to this far outside the artwork is pull compensation, not spill, mm.</summary>
    private const double SpillDistance = 0.5;

    private const int PixelsPerMillimetre = 6;

    public static TheoryData<string, string> Demo =>
        new() { { "lighthouse-bay", "small" }, { "lighthouse-bay", "large" } };

    public static TheoryData<string> Icons =>
        new(
            Directory
                .GetFiles(Repository.Path("tests", "Splitter.Tests", "Icons"), "*.svg")
                .Select(f => Path.GetFileName(f)!)
                .Order(StringComparer.Ordinal)
        );

    [SkippableTheory]
    [MemberData(nameof(Demo))]
    public void TheDemoIsCovered(string recipe, string hoop)
    {
        var request = Repository.Request(Repository.Path("recipes", $"{recipe}.yaml"), hoop);
        Check($"{recipe} {hoop}", request, Repository.Path("examples", "artwork", $"{recipe}.svg"));
    }

    [SkippableTheory]
    [MemberData(nameof(Icons))]
    public void OpenIconsAt200MillimetresAreCovered(string icon)
    {
        var file = Repository.Path("tests", "Splitter.Tests", "Icons", icon);
        var recipe = $$"""
            splitter: 1
            artwork: { file: {{icon}}, width: 200 mm }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: parts, files: [tape] }
            """;
        var request = new Request("icon.yaml", Encoding.UTF8.GetBytes(recipe), _ => new(File.ReadAllBytes(file), null));
        Check(icon, request, file);
    }

    private void Check(string name, Request request, string artwork)
    {
        Skip.IfNot(Renderer.IsThere, "rsvg-convert is not installed (Debian package librsvg2-bin).");
        var made = Pipeline.Make(request);
        Assert.True(made.Succeeded, string.Join("\n", made.Diagnostics));
        var files = made.Value.Sets.Single().Files.ToDictionary(f => f.Path.Split('/')[^1], f => f.Bytes.ToArray());
        using var manifest = JsonDocument.Parse(files["manifest.json"]);
        var size = manifest.RootElement.GetProperty("artwork");
        var (width, height) = (size.GetProperty("width_mm").GetDouble(), size.GetProperty("height_mm").GetDouble());
        var thread = Renderer.Alpha(
            ThreadPicture(manifest.RootElement, files, width, height),
            width,
            PixelsPerMillimetre
        );
        var drawn = Renderer.Alpha(File.ReadAllText(artwork), width, PixelsPerMillimetre);
        Assert.Equal((drawn.Width, drawn.Height), (thread.Width, thread.Height));

        var near = drawn.Grown((int)Math.Round(SpillDistance * PixelsPerMillimetre));
        var (area, covered, spilled) = (0, 0, 0);
        for (var i = 0; i < drawn.Set.Length; i++)
        {
            if (drawn.Set[i])
                area++;
            if (drawn.Set[i] && thread.Set[i])
                covered++;
            if (thread.Set[i] && !near.Set[i])
                spilled++;
        }
        var (coveredShare, spilledShare) = ((double)covered / area, (double)spilled / area);
        output.WriteLine(FormattableString.Invariant($"{name}: covered {coveredShare:P2}, spilled {spilledShare:P2}"));
        Assert.True(coveredShare >= Covered, FormattableString.Invariant($"{name}: covered {coveredShare:P2}"));
        Assert.True(spilledShare <= Spilled, FormattableString.Invariant($"{name}: spilled {spilledShare:P2}"));
    }

    private static string ThreadPicture(
        JsonElement manifest,
        Dictionary<string, byte[]> files,
        double width,
        double height
    )
    {
        var svg = new StringBuilder();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<svg xmlns='http://www.w3.org/2000/svg' width='{width}mm' height='{height}mm' viewBox='0 0 {width} {height}' fill='none' stroke='#000' stroke-width='.4' stroke-linecap='round' stroke-linejoin='round'>"
        );
        foreach (var part in manifest.GetProperty("parts").EnumerateArray())
        {
            var field = part.GetProperty("field");
            var centre = field.GetProperty("center_mm").EnumerateArray().Select(c => c.GetDouble()).ToArray();
            var (sin, cos) = field.GetProperty("turn_deg").GetInt32() switch
            {
                0 => (0, 1),
                90 => (1, 0),
                180 => (0, -1),
                _ => (-1, 0),
            };
            var kinds = part.GetProperty("steps")
                .EnumerateArray()
                .Select(s => s.GetProperty("kind").GetString())
                .ToArray();
            var steps = PlainTape.Steps(files[$"part-{part.GetProperty("letter").GetString()}.dst"]);
            Assert.Equal(kinds.Length, steps.Count);
            for (var s = 0; s < steps.Count; s++)
            {
                if (kinds[s] != "body")
                    continue;
                foreach (var run in steps[s])
                {
                    svg.Append("<path d='M");
                    foreach (var (u, v) in run)
                    {
                        // x = c.x + u cos t - w sin t, y = c.y + u sin t + w cos t, with w = -v
                        var x = centre[0] + (((u * cos) + (v * sin)) / 10.0);
                        var y = centre[1] + (((u * sin) - (v * cos)) / 10.0);
                        svg.Append(CultureInfo.InvariantCulture, $" {x:0.0} {y:0.0}");
                    }
                    svg.Append("'/>");
                }
            }
        }
        return svg.Append("</svg>").ToString();
    }
}

/// <summary>librsvg's command line.</summary>
internal static class Renderer
{
    internal static bool IsThere { get; } =
        (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator)
            .Any(folder => File.Exists(Path.Combine(folder, "rsvg-convert")));

    /// <summary>Which pixels a picture paints, at a resolution that makes it as wide as asked for.</summary>
    internal static Mask Alpha(string svg, double widthMillimetres, int pixelsPerMillimetre)
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
            Assert.Equal(0, process.ExitCode);
            using var bitmap = SKBitmap.Decode(png.ToArray());
            return new(bitmap.Width, bitmap.Height, [.. bitmap.Pixels.Select(p => p.Alpha >= 128)]);
        }
        finally
        {
            File.Delete(file);
        }
    }
}

/// <summary>A set of pixels.</summary>
internal sealed record Mask(int Width, int Height, bool[] Set)
{
    /// <summary>With every pixel that lies within a distance of one that is set.</summary>
    internal Mask Grown(int by)
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
