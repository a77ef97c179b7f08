using System.Collections.Immutable;
using System.Globalization;
using System.Security;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>Our letters in SVG: each is drawn once in a picture and used wherever a text has it.</summary>
internal static class SvgText
{
    internal static void Define(TextBytes svg, IEnumerable<PaintedText> texts)
    {
        var letters = texts.SelectMany(t => StrokeFont.LettersOf(t.Text)).Where(c => c != ' ').Distinct().Order();
        svg.Add("<defs>\n");
        foreach (var letter in letters)
        {
            svg.Add("<path id=\"g").Add((int)letter).Add("\" d=\"");
            // A path's unit is a tenth of a millimetre; here it is a unit of the letters' grid.
            ImmutableArray<ImmutableArray<Point>> lines =
            [
                .. StrokeFont
                    .OnGrid(letter)
                    .Lines.Select(l =>
                        l.Select(p => new Point(p.X * Units.TapeStep, p.Y * Units.TapeStep)).ToImmutableArray()
                    ),
            ];
            SvgWriter.Path(svg, lines, "");
            svg.Add("\"/>\n");
        }
        svg.Add("</defs>\n");
    }

    internal static void Write(TextBytes svg, PaintedText text)
    {
        var scale = (decimal)text.Height / (Units.TapeStep * StrokeFont.Grid);
        svg.Add($"<g aria-label=\"{SecurityElement.Escape(text.Text)}\" stroke=\"{text.Colour}\"")
            .Add(SvgWriter.Opacity("stroke", text.Opacity))
            .Add($" stroke-width=\"{Plain((decimal)text.Pen / (Units.TapeStep * scale))}\"")
            .Add(
                $" transform=\"translate({Plain(Tenths(text.At.X))} {Plain(Tenths(text.At.Y))})scale({Plain(scale)})\">"
            );
        var x = 0;
        foreach (var c in StrokeFont.LettersOf(text.Text))
        {
            if (c != ' ')
            {
                svg.Add("<use href=\"#g").Add((int)c).Add('"');
                if (x > 0)
                    svg.Add(" x=\"").Add(x).Add('"');
                svg.Add("/>");
            }
            x += StrokeFont.OnGrid(c).Advance;
        }
        svg.Add("</g>\n");
    }

    private static decimal Tenths(int micrometres) => (decimal)micrometres / Units.TapeStep;

    private static string Plain(decimal number) => number.ToString("0.####", CultureInfo.InvariantCulture);
}
