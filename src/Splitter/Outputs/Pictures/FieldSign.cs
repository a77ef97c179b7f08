using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Outputs.Pictures;

/// <summary>A part's letter on a map, and an arrow to the hoop's upper edge.</summary>
internal sealed class FieldSign(Canvas canvas, int letters, Hooping hooping)
{
    private const string Upper = "top";

    private int LetterHeight => 3 * letters;

    private int ArrowLength => 2 * letters;

    private int UpperHeight => letters * 8 / 10;

    private Point Up => TurnText.HoopUp(hooping.Field.Turn);

    /// <summary>All of it, its letter's middle at a point.</summary>
    internal Box At(Point middle)
    {
        var wide = StrokeFont.WidthOf(hooping.Letter, LetterHeight) / 2;
        var letter = Around(middle, wide, LetterHeight / 2);
        var upper = Around(UpperAt(middle), StrokeFont.WidthOf(Upper, UpperHeight) / 2, UpperHeight / 2);
        return letter.Joined(upper).Grown(letters / 3);
    }

    internal void Draw(Point middle, Colour colour)
    {
        var arrow = Off(middle, LetterAway + (ArrowLength / 2) + (letters / 2));
        canvas.Label(hooping.Letter, new(middle.X, middle.Y + (LetterHeight / 2)), LetterHeight, colour, Side.Middle);
        Arrow.Draw(canvas, arrow, Up, ArrowLength, letters * 7 / 10, Colour.White);
        Arrow.Draw(canvas, arrow, Up, ArrowLength, letters / 4, colour);
        var upper = UpperAt(middle);
        canvas.Label(Upper, new(upper.X, upper.Y + (UpperHeight / 2)), UpperHeight, colour, Side.Middle);
    }

    private int LetterAway => Up.X != 0 ? StrokeFont.WidthOf(hooping.Letter, LetterHeight) / 2 : LetterHeight / 2;

    private Point UpperAt(Point middle) =>
        Off(
            middle,
            LetterAway
                + ArrowLength
                + letters
                + ((Up.X != 0 ? StrokeFont.WidthOf(Upper, UpperHeight) : UpperHeight) / 2)
        );

    private Point Off(Point from, int by) => new(from.X + (Up.X * by), from.Y + (Up.Y * by));

    private static Box Around(Point middle, int wide, int high) =>
        new(middle.X - wide, middle.Y - high, middle.X + wide, middle.Y + high);
}
