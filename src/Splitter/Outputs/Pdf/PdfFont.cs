using System.Globalization;
using System.Text;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Outputs.Pdf;

/// <summary>
/// Our own letters as fonts of type 3 (ISO 32000-1, 9.6.5): words stay words that can be searched and copied, and no
/// machine needs a font. The pen is part of a letter, so each share of a letter's height that it is has its own font.
/// </summary>
internal static class PdfFont
{
    /// <summary>
    /// Codes are Latin 1, which begins as Unicode does, and that is what programs that read the text get (9.10.3).
    /// </summary>
    private const string ToUnicode = """
        /CIDInit /ProcSet findresource begin 12 dict begin begincmap
        /CIDSystemInfo <</Registry(Adobe)/Ordering(UCS)/Supplement 0>> def
        /CMapName /Latin1 def /CMapType 2 def
        1 begincodespacerange <00> <FF> endcodespacerange
        1 beginbfrange <20> <FF> <0020> endbfrange
        endcmap CMapName currentdict /CMap defineresource pop end end
        """;

    /// <summary>The font of a text, by the pen's share of the letters' height in thousandths.</summary>
    internal static int PenOf(PaintedText text) => ((text.Pen * 1000) + (text.Height / 2)) / text.Height;

    internal static string NameOf(int pen) => string.Create(CultureInfo.InvariantCulture, $"F{pen}");

    /// <summary>Adds the fonts that texts need; returns the entries of a dictionary of them.</summary>
    internal static string Add(PdfObjects objects, IEnumerable<PaintedText> texts)
    {
        var fonts = texts.GroupBy(PenOf).OrderBy(f => f.Key).ToList();
        if (fonts.Count == 0)
            return "";
        var unicode = objects.Add("", Encoding.ASCII.GetBytes(ToUnicode.ReplaceLineEndings("\n")));
        return string.Concat(fonts.Select(f => $"/{NameOf(f.Key)} {Add(objects, f.Key, f, unicode)} 0 R"));
    }

    private static int Add(PdfObjects objects, int pen, IEnumerable<PaintedText> texts, int unicode)
    {
        var used = texts.SelectMany(t => StrokeFont.LettersOf(t.Text)).Distinct().Order().ToList();
        var letters = string.Concat(used.Select(c => $"/g{(int)c} {objects.Add("", Letter(c, pen))} 0 R"));
        var names = string.Concat(used.Select(c => $"{(int)c}/g{(int)c} "));
        var codes = Enumerable.Range(used[0], used[^1] - used[0] + 1).Select(c => (char)c);
        var widths = string.Join(' ', codes.Select(c => used.Contains(c) ? StrokeFont.OnGrid(c).Advance : 0));
        const int Grid = StrokeFont.Grid;
        return objects.Add(
            $"<</Type/Font/Subtype/Type3/FontBBox[-{Grid} -{Grid} {2 * Grid} {2 * Grid}]/FontMatrix[{Unit} 0 0 "
                + $"{Unit} 0 0]"
                + $"/FirstChar {(int)used[0]}/LastChar {(int)used[^1]}/Widths[{widths}]/Resources<<>>"
                + $"/Encoding<</Type/Encoding/Differences[{names}]>>/CharProcs<<{letters}>>/ToUnicode {unicode} 0 R>>"
        );
    }

    /// <summary>One unit of the letters' grid where capitals are 1 high.</summary>
    private static string Unit { get; } = (1m / StrokeFont.Grid).ToString("0.########", CultureInfo.InvariantCulture);

    /// <summary>Only a shape (<c>d1</c>): it has the colour of the text. A blank has nothing to draw.</summary>
    private static byte[] Letter(char c, int pen)
    {
        var (lines, advance) = StrokeFont.OnGrid(c);
        var width = pen * StrokeFont.Grid / 1000;
        var box = Box.Around(lines.SelectMany(l => l).Select(Up)).Grown((width + 1) / 2);
        var letter = new TextBytes().Add(advance).Add(" 0 ").Add(box.Left).Add(' ').Add(box.Top).Add(' ');
        letter.Add(box.Right).Add(' ').Add(box.Bottom).Add(" d1\n");
        if (c == ' ')
            return letter.ToArray();
        letter.Add("1 J 1 j ").Add(width).Add(" w\n");
        foreach (var line in lines)
            for (var i = 0; i < line.Length; i++)
                letter.Add(line[i].X).Add(' ').Add(-line[i].Y).Add(i == 0 ? " m\n" : " l\n");
        return letter.Add("S\n").ToArray();
    }

    private static Point Up(Point p) => new(p.X, -p.Y);
}
