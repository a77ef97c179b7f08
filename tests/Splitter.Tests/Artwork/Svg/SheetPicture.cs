using System.Diagnostics;
using System.Globalization;
using System.Text;
using SkiaSharp;
using Splitter.Artwork;
using Splitter.Artwork.Svg;
using Splitter.Diagnostics;
using Splitter.Geometry;

namespace Splitter.Tests.Artwork.Svg;

/// <summary>
/// A sheet drawn anew as plain polygons, no curve or transform left, so that an independent renderer (rsvg-convert, of
/// Debian's librsvg2-bin) can show it beside the drawing that it was read from.
/// </summary>
internal static class SheetPicture
{
    internal static bool RendererIsThere { get; } =
        (Environment.GetEnvironmentVariable("PATH") ?? "")
            .Split(Path.PathSeparator)
            .Any(folder => File.Exists(Path.Combine(folder, "rsvg-convert")));

    internal static Result<Sheet> Read(string svg, int? width = null) =>
        SvgReader.Read(new("drawing.svg", Encoding.UTF8.GetBytes(svg)), width);

    /// <summary>The ground that an element covers.</summary>
    internal static Region GroundOf(DrawnElement element)
    {
        if (element is DrawnArea area)
            return area.Ground;
        var line = (DrawnLine)element;
        var ground = Polygons.Union(
            line.Paths.Select(p => Polygons.Stroke(p, line.Width, line.Cap, line.Join, line.MitreLimit))
        );
        return line.Clip is { } clip ? Polygons.Intersect(ground, clip) : ground;
    }

    /// <summary>One unit is a micrometre.</summary>
    internal static string Draw(Sheet sheet, bool black = false)
    {
        var svg = new StringBuilder(
            $"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 {sheet.Width} {sheet.Height}'>\n"
        );
        foreach (var element in sheet.Elements)
        {
            svg.Append(
                CultureInfo.InvariantCulture,
                $"<path fill='{(black ? "#000" : element.Color)}' fill-rule='evenodd' d='"
            );
            foreach (var ring in GroundOf(element).Rings)
                svg.Append('M').AppendJoin(' ', ring.Points.Select(p => $"{p.X},{p.Y}")).Append('Z');
            svg.Append("'/>\n");
        }
        return svg.Append("</svg>\n").ToString();
    }

    /// <summary>The picture of a drawing, a number of pixels wide.</summary>
    internal static SKBitmap Render(string svg, int width, int height)
    {
        var start = new ProcessStartInfo("rsvg-convert")
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        foreach (var argument in new[] { "--unlimited", "--width", $"{width}", "--height", $"{height}" })
            start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var writing = Task.Run(() =>
        {
            using var input = process.StandardInput;
            input.Write(svg);
        });
        using var png = new MemoryStream();
        process.StandardOutput.BaseStream.CopyTo(png);
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, errors.Result);
        png.Position = 0;
        return SKBitmap.Decode(png);
    }
}
