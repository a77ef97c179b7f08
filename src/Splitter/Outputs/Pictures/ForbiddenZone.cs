using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>Ground that no field may lie over, on a map: hatched.</summary>
internal static class ForbiddenZone
{
    internal static void Draw(Canvas canvas, Box zone, int letters)
    {
        canvas.Area(zone, Colour.White, 55);
        canvas.Lines(letters / 8, Colour.Ink, 60, Hatch(zone, letters));
        canvas.Outline(zone, letters / 8, Colour.Ink);
    }

    /// <summary>What it is called, in the zone if it has room there.</summary>
    internal static void Name(Canvas canvas, string word, Box zone, LabelRoom room, int letters)
    {
        var height = CornerName.HeightOf(letters);
        var width = StrokeFont.WidthOf(word, height);
        var box = room.Across(zone, width, height);
        canvas.Label(word, new(box.Left, box.Bottom), height, Colour.Ink);
    }

    /// <summary>Slanting lines up to the right, evenly spaced on the page so that zones side by side look like one.</summary>
    internal static ImmutableArray<ImmutableArray<Point>> Hatch(Box zone, int spacing)
    {
        var lines = ImmutableArray.CreateBuilder<ImmutableArray<Point>>();
        // On each line the sum of x and y is the same.
        var first = (((zone.Left + zone.Top) / spacing) + 1) * spacing;
        for (var sum = first; sum < zone.Right + zone.Bottom; sum += spacing)
        {
            var (low, high) = (Math.Max(zone.Left, sum - zone.Bottom), Math.Min(zone.Right, sum - zone.Top));
            if (low < high)
                lines.Add([new(low, sum - low), new(high, sum - high)]);
        }
        return lines.ToImmutable();
    }
}
