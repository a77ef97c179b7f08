using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Checking.Inspecting;

/// <summary>
/// The page around a picture of a tape: a heading, a frame with the work in true scale, a scale bar, and a key of
/// signs.
/// </summary>
internal sealed class TapePage
{
    private const int Letters = 2600;
    private const int Margin = 10 * Units.Millimetre;
    private const int Header = 18 * Units.Millimetre;
    private const int NarrowestPage = 130 * Units.Millimetre;
    private const int RowHeight = 6 * Units.Millimetre;
    private const int ColumnWidth = 60 * Units.Millimetre;
    private const int SignWidth = 8 * Units.Millimetre;
    internal const int SwatchWidth = 5500;

    /// <summary>Of cloth around the work.</summary>
    private const int Border = 3 * Units.Millimetre;

    /// <summary>Bare cloth, where nobody says what colour it has: the recipe's default.</summary>
    internal static readonly Colour Cloth = Colour.Of("#f4efe4");

    private readonly Box work;
    private readonly Box frame;
    private readonly int width;
    private readonly int columns;

    /// <param name="work">Around what is shown, where it lies on the tape.</param>
    internal TapePage(Box work)
    {
        this.work = work;
        width = Math.Max(NarrowestPage, work.Width + (2 * (Border + Margin)));
        columns = Math.Max(1, (width - (2 * Margin)) / ColumnWidth);
        var (left, top) = ((width - work.Width) / 2, Header + Margin);
        frame = new Box(left, top, left + work.Width, top + work.Height).Grown(Border);
    }

    internal Canvas Canvas { get; } = new();

    /// <summary>With weave, where thread is drawn as thread.</summary>
    internal void LayCloth() => Canvas.Cloth(frame, Cloth);

    /// <summary>From the tape's plane to the page.</summary>
    internal Point Lay(Point p) => new(p.X - work.Left + frame.Left + Border, p.Y - work.Top + frame.Top + Border);

    internal ImmutableArray<Point> Lay(ImmutableArray<Point> points) => [.. points.Select(Lay)];

    /// <param name="paint">Paints the work.</param>
    /// <param name="line">Below the heading.</param>
    /// <param name="key">What signs mean: each is drawn with its left end, halfway up the letters, at a point.</param>
    internal Picture Draw(
        string heading,
        string line,
        Colour ground,
        Action paint,
        ImmutableArray<(Action<Point> Sign, string Text)> key,
        string title
    )
    {
        var rows = (key.Length + columns - 1) / columns;
        var below = frame.Bottom + Margin;
        var height = below + (2 * RowHeight) + (rows * RowHeight) + Margin;
        Canvas.Area(new Box(0, 0, width, height), Colour.White);
        Canvas.Text(Fitted(heading, width - (2 * Margin), 5000), new(Margin, 12_000), 5000, Colour.Ink);
        var fits = (double)(width - (2 * Margin)) / Math.Max(1, StrokeFont.WidthOf(line, Letters));
        Canvas.Text(line, new(Margin, Header), Units.Round(Math.Min(1, fits) * Letters), Colour.Ink);
        Canvas.Area(frame, ground);
        paint();
        Canvas.Outline(frame, 200, MarkInk.Frame);
        ScaleBar.Draw(Canvas, new(Margin, below), width - (2 * Margin) - (20 * Units.Millimetre), Letters);
        for (var i = 0; i < key.Length; i++)
        {
            var (column, row) = Math.DivRem(i, rows);
            var (x, y) = (Margin + (column * ColumnWidth), below + ((row + 2) * RowHeight));
            key[i].Sign(new(x, y - (Letters / 2)));
            Canvas.Text(
                Fitted(key[i].Text, ColumnWidth - SignWidth - Letters, Letters),
                new(x + SignWidth, y),
                Letters,
                Colour.Ink
            );
        }
        return Canvas.ToPicture(width, height, title);
    }

    /// <summary>A colour with a thin edge, so that pale ones are seen.</summary>
    internal void Swatch(Point left, Colour colour)
    {
        var box = new Box(left.X, left.Y - 1800, left.X + SwatchWidth, left.Y + 1800);
        Canvas.Area(box, colour);
        Canvas.Outline(box, 150, MarkInk.Frame);
    }

    private static string Fitted(string text, int room, int height)
    {
        while (text.Length > 1 && StrokeFont.WidthOf(text, height) > room)
            text = text[..^1];
        return text;
    }
}
