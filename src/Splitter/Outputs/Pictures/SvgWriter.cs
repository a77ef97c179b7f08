using System.Collections.Immutable;
using System.Globalization;
using System.Security;
using System.Text;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// Pictures to SVG in true scale: the page and its viewBox in millimetres, paths inside in tenths of them (which stitches
/// need no decimals for), relative, so that a picture of ten thousand stitches stays small.
/// </summary>
internal static class SvgWriter
{
    internal static byte[] Write(Picture picture)
    {
        var (width, height) = (Millimetres(picture.Width), Millimetres(picture.Height));
        var svg = new StringBuilder()
            .Append($"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" ")
            .Append($"viewBox=\"0 0 {width} {height}\">\n<title>{SecurityElement.Escape(picture.Title)}</title>\n")
            .Append("<g transform=\"scale(.1)\" fill=\"none\" stroke-linecap=\"round\" stroke-linejoin=\"round\">\n");
        var threads = 0;
        foreach (var item in picture.Items)
        {
            switch (item)
            {
                case PaintedArea area:
                    svg.Append($"<path fill=\"{area.Colour}\"{Opacity("fill", area.Opacity)} d=\"");
                    Path(svg, area.Outlines, "z");
                    svg.Append("\"/>\n");
                    break;
                case PaintedLines lines:
                    if (lines.Text is { } text)
                        svg.Append($"<path aria-label=\"{SecurityElement.Escape(text)}\"");
                    else
                        svg.Append("<path");
                    svg.Append($" stroke=\"{lines.Colour}\"{Opacity("stroke", lines.Opacity)}");
                    svg.Append($" stroke-width=\"{Tenths(lines.Width)}\" d=\"");
                    Path(svg, lines.Lines, "");
                    svg.Append("\"/>\n");
                    break;
                case PaintedThread thread:
                    threads++;
                    svg.Append($"<g stroke=\"{thread.Shade}\" stroke-width=\"{Tenths(PaintedThread.Width)}\">");
                    svg.Append($"<g id=\"t{threads}\"><path d=\"");
                    Path(svg, thread.Lines, "");
                    svg.Append("\"/></g></g>\n");
                    svg.Append($"<use href=\"#t{threads}\" stroke=\"{thread.Colour}\"");
                    svg.Append($" stroke-width=\"{Tenths(PaintedThread.CoreWidth)}\"/>\n");
                    break;
                default:
                    throw new InvalidOperationException($"{item.GetType().Name} cannot be drawn.");
            }
        }
        return Encoding.UTF8.GetBytes(svg.Append("</g>\n</svg>\n").ToString());
    }

    private static void Path(StringBuilder svg, ImmutableArray<ImmutableArray<Point>> lines, string close)
    {
        foreach (var line in lines)
        {
            var last = Snapped(line[0]);
            svg.Append('M');
            Pair(svg, last, first: true);
            svg.Append('l');
            var first = true;
            foreach (var point in line.AsSpan()[1..])
            {
                var at = Snapped(point);
                // A line without length is a dot, an outline's point that moves nowhere is nothing.
                if (at == last && (close.Length > 0 || line.Length > 2))
                    continue;
                Pair(svg, at - last, first);
                (last, first) = (at, false);
            }
            if (first)
                svg.Append("0 0");
            svg.Append(close);
        }
    }

    /// <summary>In hundredths of a millimetre.</summary>
    private static Point Snapped(Point point) => new(Hundredths(point.X), Hundredths(point.Y));

    private static int Hundredths(int micrometres) => (int)Math.Floor((micrometres + 5) / 10.0);

    private static void Pair(StringBuilder svg, Point hundredths, bool first)
    {
        if (!first && hundredths.X >= 0)
            svg.Append(' ');
        Number(svg, hundredths.X);
        if (hundredths.Y >= 0)
            svg.Append(' ');
        Number(svg, hundredths.Y);
    }

    /// <summary>Hundredths of a millimetre as tenths with at most one decimal.</summary>
    private static void Number(StringBuilder svg, int hundredths)
    {
        if (hundredths < 0)
            svg.Append('-');
        var (whole, part) = Math.DivRem(Math.Abs(hundredths), 10);
        if (whole > 0 || part == 0)
            svg.Append(CultureInfo.InvariantCulture, $"{whole}");
        if (part > 0)
            svg.Append(CultureInfo.InvariantCulture, $".{part}");
    }

    private static string Opacity(string of, int percent) =>
        percent == 100 ? "" : string.Create(CultureInfo.InvariantCulture, $" {of}-opacity=\".{percent:00}\"");

    private static string Millimetres(int micrometres) =>
        ((decimal)micrometres / Units.Millimetre).ToString("0.###", CultureInfo.InvariantCulture);

    private static string Tenths(int micrometres) =>
        ((decimal)micrometres / Units.TapeStep).ToString("0.##", CultureInfo.InvariantCulture);
}
