using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// A part's letter on a map, an arrow to the hoop's upper edge, and what else there is to say of the field.
/// </summary>
/// <param name="upper">What the hoop's upper edge is called.</param>
/// <param name="note">A word below the letter, or none.</param>
internal sealed class FieldSign(Canvas canvas, int letters, Hooping hooping, string upper, string? note)
{
    /// <summary>A large letter needs a slender rim only, as a share of its height.</summary>
    private const double LargeRim = 0.3;

    private int LetterHeight => 3 * letters;

    private int ArrowLength => 2 * letters;

    private int UpperHeight => MarkName.HeightOf(letters);

    private Point Up => TurnText.HoopUp(hooping.Field.Turn);

    /// <summary>All of it, its letter's middle at a point.</summary>
    internal Box At(Point middle)
    {
        var wide = StrokeFont.WidthOf(hooping.Letter, LetterHeight) / 2;
        var letter = Around(middle, wide, LetterHeight / 2);
        var edge = Around(UpperAt(middle), StrokeFont.WidthOf(upper, UpperHeight) / 2, UpperHeight / 2);
        var word = note is null
            ? Box.Empty
            : Around(NoteAt(middle), StrokeFont.WidthOf(note, UpperHeight) / 2, UpperHeight / 2);
        return letter.Joined(edge).Joined(word).Grown(letters / 3);
    }

    internal void Draw(Point middle, Colour colour)
    {
        var arrow = Off(middle, LetterAway + (ArrowLength / 2) + (letters / 2));
        canvas.Label(
            hooping.Letter,
            new(middle.X, middle.Y + (LetterHeight / 2)),
            LetterHeight,
            colour,
            Side.Middle,
            LargeRim
        );
        Arrow.Draw(canvas, arrow, Up, ArrowLength, letters * 7 / 10, Colour.White);
        Arrow.Draw(canvas, arrow, Up, ArrowLength, letters / 4, colour);
        var edge = UpperAt(middle);
        canvas.Label(upper, new(edge.X, edge.Y + (UpperHeight / 2)), UpperHeight, colour, Side.Middle);
        if (note is null)
            return;
        var word = NoteAt(middle);
        canvas.Label(note, new(word.X, word.Y + (UpperHeight / 2)), UpperHeight, colour, Side.Middle);
    }

    private int LetterAway => Up.X != 0 ? StrokeFont.WidthOf(hooping.Letter, LetterHeight) / 2 : LetterHeight / 2;

    private Point UpperAt(Point middle) =>
        Off(
            middle,
            LetterAway
                + ArrowLength
                + letters
                + ((Up.X != 0 ? StrokeFont.WidthOf(upper, UpperHeight) : UpperHeight) / 2)
        );

    /// <summary>Below the letter, or above it where the arrow points down.</summary>
    private Point NoteAt(Point middle) =>
        new(middle.X, middle.Y + ((Up.Y > 0 ? -1 : 1) * ((LetterHeight / 2) + letters + (UpperHeight / 2))));

    private Point Off(Point from, int by) => new(from.X + (Up.X * by), from.Y + (Up.Y * by));

    private static Box Around(Point middle, int wide, int high) =>
        new(middle.X - wide, middle.Y - high, middle.X + wide, middle.Y + high);
}
