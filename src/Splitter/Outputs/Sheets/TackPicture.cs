using System.Xml.Linq;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// How the cloth is set by its corners, as one would see it cut through: tacks from below, the cloth over them.
/// </summary>
internal static class TackPicture
{
    private const int Height = 38 * Units.Millimetre,
        Letters = 3 * Units.Millimetre,
        Left = 10 * Units.Millimetre,
        Right = 84 * Units.Millimetre,
        WordsAt = 92 * Units.Millimetre;

    /// <summary>Heights of what lies above each other.</summary>
    private const int Point = 5 * Units.Millimetre,
        ClothAt = 13 * Units.Millimetre,
        StabilizerAt = 20 * Units.Millimetre,
        HeadAt = 22 * Units.Millimetre,
        TapeAt = 24 * Units.Millimetre,
        HoopFoot = 30 * Units.Millimetre;

    internal static XElement Of(SheetContent sheet)
    {
        var (say, canvas) = (sheet.Say, new Canvas());
        foreach (var x in new[] { Left, Right })
            canvas.Area(new Box(x - 3000, StabilizerAt - 3000, x + 3000, HoopFoot), MarkInk.Frame);
        canvas.Line(900, MarkInk.Frame, 100, new(Left, StabilizerAt), new(Right, StabilizerAt));
        foreach (var x in new[] { 30 * Units.Millimetre, 62 * Units.Millimetre })
            Tack(canvas, x);
        var cloth = Colour.Of(sheet.Recipe.Cloth.Color);
        canvas.Line(2600, Colour.Ink, 100, new(Left - 6000, ClothAt), new(Right + 4000, ClothAt));
        canvas.Line(2000, cloth, 100, new(Left - 6000, ClothAt), new(Right + 4000, ClothAt));
        foreach (var x in new[] { 30 * Units.Millimetre, 62 * Units.Millimetre })
        {
            canvas.Line(500, Colour.Ink, 100, new(x, ClothAt + 1200), new(x, Point));
            canvas.Line(1400, MarkInk.Corner, 100, new(x, ClothAt), new(x + 7000, ClothAt));
        }
        (string Text, int Y, Point To)[] words =
        [
            (say.Say("tack.point"), Point + 1500, new(62 * Units.Millimetre, Point + 500)),
            (say.Say("tack.cloth"), ClothAt, new(Right + 4000, ClothAt)),
            (say.Say("tack.stabilizer"), StabilizerAt, new(Right - 4000, StabilizerAt)),
            (say.Say("tack.tape"), TapeAt + 3000, new(66 * Units.Millimetre, TapeAt)),
        ];
        foreach (var (text, y, to) in words)
            Word(canvas, text, y, to);
        var width = WordsAt + words.Max(word => StrokeFont.WidthOf(word.Text, Letters)) + Letters;
        return InlineSvg.Of(width, Height, say.Say("tack.picture"), "tack", InlineSvg.Items(canvas));
    }

    /// <summary>Its head below the stabilizer, held by tape.</summary>
    private static void Tack(Canvas canvas, int x)
    {
        canvas.Line(500, Colour.Ink, 100, new(x, HeadAt), new(x, ClothAt));
        canvas.Line(1100, Colour.Ink, 100, new(x - 3000, HeadAt), new(x + 3000, HeadAt));
        canvas.Line(900, MarkInk.Alignment, 60, new(x - 8000, TapeAt), new(x + 8000, TapeAt));
    }

    private static void Word(Canvas canvas, string word, int y, Point to)
    {
        canvas.Line(200, Colour.Ink, 100, new(WordsAt - 1000, y), to);
        canvas.Text(word, new(WordsAt, y + (Letters / 2)), Letters, Colour.Ink);
    }
}
