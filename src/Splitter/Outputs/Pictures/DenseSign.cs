using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>A ring round a place where thread lies in too many layers or is sewn through too often.</summary>
internal static class DenseSign
{
    internal static void Draw(Canvas canvas, Point middle, int letters)
    {
        canvas.Ring(middle, letters * 2 / 5, letters / 4, Colour.White);
        canvas.Ring(middle, letters * 2 / 5, letters / 8, MarkInk.TooFar);
    }
}
