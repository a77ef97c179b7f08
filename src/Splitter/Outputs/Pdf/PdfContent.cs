using System.Collections.Immutable;
using System.Globalization;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Outputs.Pdf;

/// <summary>
/// What is painted, as the operators of a content stream (ISO 32000-1, annex A). Lengths are whole hundredths of a
/// millimetre, y down: the page sets its scale once.
/// </summary>
internal sealed class PdfContent
{
    private readonly TextBytes operators = new();

    internal byte[] ToArray() => operators.ToArray();

    internal static string OpacityName(int percent) => string.Create(CultureInfo.InvariantCulture, $"G{percent}");

    internal PdfContent Add(string text)
    {
        operators.Add(text);
        return this;
    }

    internal PdfContent Add(ImmutableArray<Item> items)
    {
        // Ends and bends are round.
        operators.Add("1 J 1 j\n");
        foreach (var item in items)
        {
            switch (item)
            {
                case PaintedArea area:
                    Seen(area.Opacity, () => Fill(area));
                    break;
                case PaintedLines lines:
                    Seen(lines.Opacity, () => Stroke(lines.Lines, lines.Width, lines.Colour));
                    break;
                case PaintedText text:
                    Seen(text.Opacity, () => Write(text));
                    break;
                default:
                    throw new InvalidOperationException($"{item.GetType().Name} cannot be drawn.");
            }
        }
        return this;
    }

    private void Seen(int opacity, Action paint)
    {
        if (opacity < 100)
            operators.Add("q /").Add(OpacityName(opacity)).Add(" gs\n");
        paint();
        if (opacity < 100)
            operators.Add("Q\n");
    }

    private void Fill(PaintedArea area)
    {
        Colour(area.Colour, "rg\n");
        Path(area.Outlines, " h\n");
        operators.Add("f\n");
    }

    private void Stroke(ImmutableArray<ImmutableArray<Point>> lines, int width, Colour colour)
    {
        Colour(colour, "RG ");
        operators.Add(Number(width / 10m)).Add(" w\n");
        Path(lines, "\n");
        operators.Add("S\n");
    }

    /// <summary>Letters are strokes that a viewer may take for areas: both colours are the text's.</summary>
    private void Write(PaintedText text)
    {
        Colour(text.Colour, "rg ");
        Colour(text.Colour, "RG\nBT /");
        operators.Add(PdfFont.NameOf(PdfFont.PenOf(text))).Add(' ').Add(Number(text.Height / 10m)).Add(" Tf 1 0 0 -1 ");
        Place(text.At);
        operators.Add(" Tm (");
        foreach (var c in StrokeFont.LettersOf(text.Text))
        {
            if (c is '(' or ')' or '\\')
                operators.Add('\\');
            if (c > '~')
                operators.Add('\\').Add(Convert.ToString(c, 8));
            else
                operators.Add(c);
        }
        operators.Add(") Tj ET\n");
    }

    private void Path(ImmutableArray<ImmutableArray<Point>> lines, string close)
    {
        foreach (var line in lines)
        {
            Place(line[0]);
            operators.Add(" m");
            foreach (var point in line.AsSpan()[1..])
            {
                operators.Add(' ');
                Place(point);
                operators.Add(" l");
            }
            operators.Add(close);
        }
    }

    private void Place(Point point) => operators.Add(Hundredths(point.X)).Add(' ').Add(Hundredths(point.Y));

    private void Colour(Colour colour, string operation) =>
        operators
            .Add(Number(Math.Round(colour.Red / 255m, 3)))
            .Add(' ')
            .Add(Number(Math.Round(colour.Green / 255m, 3)))
            .Add(' ')
            .Add(Number(Math.Round(colour.Blue / 255m, 3)))
            .Add(' ')
            .Add(operation);

    internal static int Hundredths(int micrometres) => (int)Math.Floor((micrometres + 5) / 10.0);

    private static string Number(decimal number) => number.ToString("0.###", CultureInfo.InvariantCulture);
}
