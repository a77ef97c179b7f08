using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>A bar to hold a rule against: a print that was scaled shows.</summary>
internal static class ScaleBar
{
    /// <summary>From its left end; 100 mm, or as many tens of millimetres as there is room for.</summary>
    internal static void Draw(Canvas canvas, Point left, int room, int letters)
    {
        var length = Math.Clamp(room / (10 * Units.Millimetre), 1, 10) * 10 * Units.Millimetre;
        var (tick, pen) = (letters / 2, Math.Max(200, letters / 10));
        var boxes = length / 10;
        for (var i = 0; i < 10; i += 2)
            canvas.Area(new Box(left.X + (i * boxes), left.Y, left.X + ((i + 1) * boxes), left.Y + tick), Colour.Ink);
        canvas.Outline(new(left.X, left.Y, left.X + length, left.Y + tick), pen / 2, Colour.Ink);
        canvas.Text(
            $"{length / Units.Millimetre} mm",
            new(left.X + length + letters, left.Y + tick),
            letters,
            Colour.Ink
        );
    }
}
