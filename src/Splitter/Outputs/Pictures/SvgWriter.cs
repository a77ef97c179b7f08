using System.Collections.Immutable;
using System.Globalization;
using System.Security;
using Splitter.Geometry;
using Splitter.Outputs.Pictures.Strands;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// Pictures to SVG in true scale: the page and its viewBox in millimetres, paths inside in tenths of them (which
/// stitches need no decimals for), relative, so that a picture of ten thousand stitches stays small.
/// </summary>
internal static class SvgWriter
{
    internal static byte[] Write(Picture picture)
    {
        var (width, height) = (Millimetres(picture.Width), Millimetres(picture.Height));
        var svg = new TextBytes(TextBytes.Long)
            .Add($"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" ")
            .Add($"viewBox=\"0 0 {width} {height}\">\n<title>{SecurityElement.Escape(picture.Title)}</title>\n")
            .Add("<g transform=\"scale(.1)\" fill=\"none\" stroke-linecap=\"round\" stroke-linejoin=\"round\">\n");
        SvgText.Define(svg, picture.Items.OfType<PaintedText>());
        if (picture.Items.Any(i => i is PaintedCloth))
            Weave.Define(svg);
        var strands = new StrandSvg(svg);
        foreach (var item in picture.Items)
        {
            switch (item)
            {
                case PaintedArea area:
                    svg.Add($"<path fill=\"{area.Colour}\"{Opacity("fill", area.Opacity)} d=\"");
                    Path(svg, area.Outlines, "z");
                    svg.Add("\"/>\n");
                    break;
                case PaintedLines lines:
                    svg.Add($"<path stroke=\"{lines.Colour}\"{Opacity("stroke", lines.Opacity)}");
                    svg.Add($" stroke-width=\"{Tenths(lines.Width)}\" d=\"");
                    Path(svg, lines.Lines, "");
                    svg.Add("\"/>\n");
                    break;
                case PaintedText text:
                    SvgText.Write(svg, text);
                    break;
                case PaintedThread thread:
                    strands.Write(thread);
                    break;
                case PaintedCloth cloth:
                    Weave.Write(svg, cloth);
                    break;
                default:
                    throw new InvalidOperationException($"{item.GetType().Name} cannot be drawn.");
            }
        }
        return svg.Add("</g>\n</svg>\n").ToArray();
    }

    internal static void Path(TextBytes svg, ImmutableArray<ImmutableArray<Point>> lines, string close)
    {
        foreach (var line in lines)
        {
            var last = Snapped(line[0]);
            svg.Add('M');
            Pair(svg, last, first: true);
            svg.Add('l');
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
                svg.Add("0 0");
            svg.Add(close);
        }
    }

    /// <summary>In hundredths of a millimetre.</summary>
    private static Point Snapped(Point point) => new(Hundredths(point.X), Hundredths(point.Y));

    private static int Hundredths(int micrometres) => (int)Math.Floor((micrometres + 5) / 10.0);

    private static void Pair(TextBytes svg, Point hundredths, bool first)
    {
        if (!first && hundredths.X >= 0)
            svg.Add(' ');
        svg.AddShortTenths(hundredths.X);
        if (hundredths.Y >= 0)
            svg.Add(' ');
        svg.AddShortTenths(hundredths.Y);
    }

    internal static string Opacity(string of, int percent) =>
        percent == 100 ? "" : string.Create(CultureInfo.InvariantCulture, $" {of}-opacity=\".{percent:00}\"");

    private static string Millimetres(int micrometres) =>
        ((decimal)micrometres / Units.Millimetre).ToString("0.###", CultureInfo.InvariantCulture);

    internal static string Tenths(int micrometres) =>
        ((decimal)micrometres / Units.TapeStep).ToString("0.##", CultureInfo.InvariantCulture);
}
