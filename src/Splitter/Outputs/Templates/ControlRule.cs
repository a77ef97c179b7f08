using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Outputs.Templates;

/// <summary>
/// 100 mm and 4 in from one start, to be measured before anything else is: a print that was scaled shows.
/// </summary>
internal static class ControlRule
{
    private const int Centimetre = 10 * Units.Millimetre;
    private const int Centimetres = 10;
    private const int QuarterInch = Units.Inch / 4;
    private const int QuarterInches = 16;
    private const int Pen = 150;

    /// <summary>Ticks of halves and ends, and those between.</summary>
    private const int Long = 3 * Units.Millimetre,
        Short = 1600;

    private const int Gap = 1500;

    /// <summary>As every language writes them.</summary>
    private const string Millimetres = "100 mm",
        Inches = "4 in";

    /// <summary>Millimetres above, inches below.</summary>
    internal static void Level(Canvas canvas, Point start)
    {
        Draw(canvas, start, new(1, 0), new(0, -1));
        var end = start.X + (Centimetre * Centimetres) + Gap + Gap;
        Text(canvas, Millimetres, new(end, start.Y - 700), Side.Left);
        Text(canvas, Inches, new(end, start.Y + 700 + TemplateInk.SmallLetters), Side.Left);
    }

    /// <summary>Millimetres at the left, inches at the right.</summary>
    internal static void Upright(Canvas canvas, Point start)
    {
        Draw(canvas, start, new(0, 1), new(-1, 0));
        var end = start.Y + (Centimetre * Centimetres) + Gap + Gap + TemplateInk.SmallLetters;
        Text(canvas, Millimetres, new(start.X - Gap, end), Side.Right);
        Text(canvas, Inches, new(start.X + Gap, end), Side.Left);
    }

    private static void Draw(Canvas canvas, Point start, Point along, Point side)
    {
        Line(start, new(start.X + (along.X * 4 * Units.Inch), start.Y + (along.Y * 4 * Units.Inch)));
        for (var i = 0; i <= Centimetres; i++)
            Tick(i * Centimetre, i % 5 == 0 ? Long : Short, side);
        for (var i = 0; i <= QuarterInches; i++)
            Tick(i * QuarterInch, i % 4 == 0 ? Long : Short, new(-side.X, -side.Y));

        void Tick(int at, int length, Point way)
        {
            var foot = new Point(start.X + (along.X * at), start.Y + (along.Y * at));
            Line(foot, new(foot.X + (way.X * length), foot.Y + (way.Y * length)));
        }

        void Line(Point from, Point to) => canvas.Line(Pen, Colour.Ink, 100, from, to);
    }

    private static void Text(Canvas canvas, string text, Point at, Side side) =>
        canvas.Text(text, at, TemplateInk.SmallLetters, Colour.Ink, side);
}
