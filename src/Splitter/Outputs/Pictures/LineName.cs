using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>How long a line is, on it or beside it; words that stand off have a line to it.</summary>
internal sealed record LineName(string Text, Point On, Box Box, int Letters)
{
    /// <summary>Null where it has no place that is clear of other lines.</summary>
    internal static LineName? Of(
        string text,
        (Point From, Point To) line,
        IEnumerable<(Point From, Point To)> others,
        LabelRoom room,
        int letters
    ) =>
        room.OnLine(line, StrokeFont.WidthOf(text, letters), letters, others) is var (on, box)
            ? new(text, on, box, letters)
            : null;

    internal void DrawLine(Canvas canvas)
    {
        if (!Box.Contains(On))
            canvas.Line(Letters / 8, Colour.Ink, 100, On, LabelRoom.Nearest(On, Box));
    }

    internal void Draw(Canvas canvas) => canvas.Label(Text, new(Box.Left, Box.Bottom), Letters, Colour.Ink);
}
