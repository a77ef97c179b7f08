using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Xml.Linq;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// Pictures inside the page. Its unit is a tenth of a millimetre; words are text, so that they can be read aloud and
/// found.
/// </summary>
internal static class InlineSvg
{
    /// <summary>
    /// Height of a capital as a share of a font's size, about the same in all usual fonts (from memory).
    /// </summary>
    private const double CapitalShare = 0.72;

    /// <summary>Width of the strokes of a usual font, as a share of its capitals (from memory).</summary>
    private const double FontPen = 0.13;

    /// <param name="label">What it shows, for those who do not see it.</param>
    /// <param name="of">Class of the picture.</param>
    internal static XElement Of(int width, int height, string label, string of, params object?[] layers) =>
        new(
            "svg",
            new XAttribute("class", of),
            new XAttribute("role", "img"),
            new XAttribute("aria-label", label),
            new XAttribute("viewBox", $"0 0 {Tenths(width)} {Tenths(height)}"),
            // Its size before any style: a reader without styles must not see it a page wide.
            new XAttribute("width", $"{Tenths(width / 2)}"),
            layers
        );

    /// <summary>What is painted on a canvas.</summary>
    internal static XElement Items(Canvas canvas) =>
        new(
            "g",
            new XAttribute("fill", "none"),
            new XAttribute("stroke-linecap", "round"),
            new XAttribute("stroke-linejoin", "round"),
            canvas.ToPicture(0, 0, "").Items.Select(Of)
        );

    /// <summary>What stands elsewhere in the page, once more.</summary>
    internal static XElement Use(string id, string transform, params object?[] attributes) =>
        new("use", new XAttribute("href", $"#{id}"), new XAttribute("transform", transform), attributes);

    internal static string Moved(Point by) => $"translate({Tenths(by.X)} {Tenths(by.Y)})";

    internal static string Tenths(double micrometres) =>
        Math.Round((decimal)micrometres / Units.TapeStep, 2).ToString("0.##", CultureInfo.InvariantCulture);

    internal static XElement Area(ImmutableArray<ImmutableArray<Point>> outlines, Colour colour) =>
        new("path", new XAttribute("fill", $"{colour}"), new XAttribute("d", Path(outlines, "z")));

    private static XElement Of(Item item) =>
        item switch
        {
            PaintedArea area => With(Area(area.Outlines, area.Colour), "fill-opacity", area.Opacity),
            PaintedLines lines => With(
                new(
                    "path",
                    new XAttribute("stroke", $"{lines.Colour}"),
                    new XAttribute("stroke-width", Tenths(lines.Width)),
                    new XAttribute("d", Path(lines.Lines, ""))
                ),
                "stroke-opacity",
                lines.Opacity
            ),
            PaintedText text => Of(text),
            _ => throw new InvalidOperationException($"{item.GetType().Name} cannot be drawn here."),
        };

    /// <summary>As wide as the letters for which it was laid out, whatever font a reader has.</summary>
    private static XElement Of(PaintedText text)
    {
        var more = text.Pen - (FontPen * text.Height);
        return With(
            new(
                "text",
                new XAttribute("x", Tenths(text.At.X)),
                new XAttribute("y", Tenths(text.At.Y)),
                new XAttribute("font-size", Tenths(text.Height / CapitalShare)),
                new XAttribute("textLength", Tenths(StrokeFont.WidthOf(text.Text, text.Height))),
                new XAttribute("lengthAdjust", "spacingAndGlyphs"),
                new XAttribute("fill", $"{text.Colour}"),
                more <= 0
                    ? null
                    : new[]
                    {
                        new XAttribute("stroke", $"{text.Colour}"),
                        new XAttribute("stroke-width", Tenths(more)),
                    },
                // A rim below the same words is no text of its own.
                text.Colour == Colour.White
                    ? new XAttribute("aria-hidden", "true")
                    : null,
                text.Text
            ),
            "opacity",
            text.Opacity
        );
    }

    private static XElement With(XElement element, string of, int percent)
    {
        if (percent != 100)
            element.Add(new XAttribute(of, (percent / 100m).ToString("0.##", CultureInfo.InvariantCulture)));
        return element;
    }

    private static string Path(ImmutableArray<ImmutableArray<Point>> lines, string close)
    {
        var path = new TextBytes();
        SvgWriter.Path(path, lines, close);
        return Encoding.UTF8.GetString(path.ToArray());
    }
}
