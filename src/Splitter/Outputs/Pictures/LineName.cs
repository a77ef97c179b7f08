using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>How long a line is, on it or beside it; words that stand off have a line to it.</summary>
internal sealed record LineName(string Text, Point On, Box Box, int Letters)
{
    internal static LineName Of(string text, Point from, Point to, LabelRoom room, int letters)
    {
        var (on, box) = room.OnLine(from, to, StrokeFont.WidthOf(text, letters), letters);
        return new(text, on, box, letters);
    }

    internal void DrawLine(Canvas canvas)
    {
        if (!Box.Contains(On))
            canvas.Line(Letters / 8, Colour.Ink, 100, On, LabelRoom.Nearest(On, Box));
    }

    internal void Draw(Canvas canvas) => canvas.Label(Text, new(Box.Left, Box.Bottom), Letters, Colour.Ink);
}
