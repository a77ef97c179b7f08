using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Outputs.Pictures;

/// <summary>An alignment cross on a map: as large as it is sewn, or as large as can be seen.</summary>
internal static class AlignmentSign
{
    internal static Box At(Point middle, int letters) => Box.Around([middle]).Grown(Arm(letters));

    internal static void Draw(Canvas canvas, Point middle, int letters)
    {
        Cross(canvas, middle, Arm(letters), letters * 4 / 10, Colour.White);
        Stroke(canvas, middle, letters);
    }

    /// <summary>Without its rim, over what else is marked at the same place.</summary>
    internal static void Stroke(Canvas canvas, Point middle, int letters) =>
        Cross(canvas, middle, Arm(letters), letters / 7, MarkInk.Alignment);

    private static int Arm(int letters) => Math.Max(AlignmentStitch.Arm, letters * 45 / 100);

    private static void Cross(Canvas canvas, Point middle, int arm, int width, Colour colour) =>
        canvas.Lines(
            width,
            colour,
            100,
            [
                [middle with { X = middle.X - arm }, middle with { X = middle.X + arm }],
                [middle with { Y = middle.Y - arm }, middle with { Y = middle.Y + arm }],
            ]
        );
}
