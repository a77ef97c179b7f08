using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>A small arrow along an axis.</summary>
internal static class Arrow
{
    /// <param name="up">One step towards where it points.</param>
    internal static void Draw(Canvas canvas, Point middle, Point up, int length, Colour colour) =>
        Draw(canvas, middle, up, length, length / 8, colour);

    internal static void Draw(Canvas canvas, Point middle, Point up, int length, int width, Colour colour)
    {
        var (half, head) = (length / 2, length * 2 / 5);
        var tip = new Point(middle.X + (up.X * half), middle.Y + (up.Y * half));
        var tail = new Point(middle.X - (up.X * half), middle.Y - (up.Y * half));
        var side = new Point(-up.Y, up.X);
        canvas.Line(width, colour, 100, tail, tip);
        canvas.Line(
            width,
            colour,
            100,
            new(tip.X - ((up.X + side.X) * head), tip.Y - ((up.Y + side.Y) * head)),
            tip,
            new(tip.X - ((up.X - side.X) * head), tip.Y - ((up.Y - side.Y) * head))
        );
    }
}
