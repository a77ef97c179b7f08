using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>Where a text stands on its line.</summary>
internal enum Side
{
    Left,
    Middle,
    Right,
}

/// <summary>A picture while it is painted.</summary>
internal sealed class Canvas
{
    /// <summary>Share of a letter's height that is the width of its strokes.</summary>
    private const double Weight = 0.125;

    /// <summary>The same of a label that stands on the work.</summary>
    private const double Bold = 0.17;

    /// <summary>The pen of the light rim below it: so wide that the insides of letters are light too.</summary>
    private const double Rim = 0.55;

    private readonly ImmutableArray<Item>.Builder items = ImmutableArray.CreateBuilder<Item>();

    internal ImmutableArray<Item> ToItems() => items.ToImmutable();

    internal Picture ToPicture(int width, int height, string title) => new(width, height, title, ToItems());

    internal void Area(Region region, Colour colour, int opacity = 100) =>
        Area([.. region.Rings.Select(r => r.Points)], colour, opacity);

    internal void Area(ImmutableArray<ImmutableArray<Point>> outlines, Colour colour, int opacity = 100) =>
        items.Add(new PaintedArea(outlines, colour, opacity));

    internal void Area(Box box, Colour colour, int opacity = 100) => Area(Region.Of(box), colour, opacity);

    internal void Disc(Point centre, int radius, Colour colour, int opacity = 100) =>
        items.Add(new PaintedArea([Circle.Around(centre, radius)], colour, opacity));

    internal void Ring(Point centre, int radius, int width, Colour colour)
    {
        var round = Circle.Around(centre, radius);
        Line(width, colour, 100, [.. round, round[0]]);
    }

    internal void Line(int width, Colour colour, int opacity, params ReadOnlySpan<Point> points) =>
        items.Add(
            new PaintedLines(
                [
                    [.. points],
                ],
                width,
                colour,
                opacity
            )
        );

    internal void Lines(int width, Colour colour, int opacity, ImmutableArray<ImmutableArray<Point>> lines) =>
        items.Add(new PaintedLines(lines, width, colour, opacity));

    internal void Outline(Box box, int width, Colour colour, int opacity = 100) =>
        Line(width, colour, opacity, Around(box));

    internal void Dashes(int width, int dash, Colour colour, params ReadOnlySpan<Point> points) =>
        items.Add(new PaintedLines(Dashed.Cut([.. points], dash, dash), width, colour, 100));

    internal void DashedOutline(Box box, int width, int dash, Colour colour) =>
        Dashes(width, dash, colour, Around(box));

    internal void Cloth(Box box, Colour colour) => items.Add(new PaintedCloth(box, colour));

    /// <param name="lines">In sewing order.</param>
    internal void Thread(ImmutableArray<ImmutableArray<Point>> lines, Colour colour) =>
        items.Add(new PaintedThread(lines, colour));

    /// <summary>Text with its baseline at a point, capitals of a height.</summary>
    internal void Text(string text, Point at, int height, Colour colour, Side side = Side.Left) =>
        items.Add(new PaintedText(text, Left(text, at, height, side), height, (int)(height * Weight), colour, 100));

    /// <summary>The same on a light rim, to be read on any ground.</summary>
    internal void Label(string text, Point at, int height, Colour colour, Side side = Side.Left, double rim = Rim)
    {
        var left = Left(text, at, height, side);
        items.Add(new PaintedText(text, left, height, (int)(height * rim), Colour.White, 100));
        items.Add(new PaintedText(text, left, height, (int)(height * Bold), colour, 100));
    }

    private static Point Left(string text, Point at, int height, Side side) =>
        side switch
        {
            Side.Left => at,
            Side.Middle => at with { X = at.X - (StrokeFont.WidthOf(text, height) / 2) },
            _ => at with { X = at.X - StrokeFont.WidthOf(text, height) },
        };

    private static Point[] Around(Box box) =>
        [
            new(box.Left, box.Top),
            new(box.Right, box.Top),
            new(box.Right, box.Bottom),
            new(box.Left, box.Bottom),
            new(box.Left, box.Top),
        ];
}
