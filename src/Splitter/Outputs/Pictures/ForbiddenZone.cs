using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>Ground that no field may lie over, on a map: hatched.</summary>
internal static class ForbiddenZone
{
    internal static void Draw(Canvas canvas, Box zone, int letters)
    {
        canvas.Area(zone, Colour.White, 55);
        canvas.Lines(letters / 8, Colour.Ink, 60, Hatching.Of(zone, letters));
        canvas.Outline(zone, letters / 8, Colour.Ink);
    }

    /// <summary>What it is called, in the zone if it has room there.</summary>
    internal static void Name(Canvas canvas, string word, Box zone, LabelRoom room, int letters)
    {
        var height = MarkName.HeightOf(letters);
        var width = StrokeFont.WidthOf(word, height);
        var box = room.Across(zone, width, height);
        canvas.Label(word, new(box.Left, box.Bottom), height, Colour.Ink);
    }
}
