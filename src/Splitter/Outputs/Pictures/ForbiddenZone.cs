using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>Ground that no field may lie over, on a map: hatched, with the recipe's word for it.</summary>
internal static class ForbiddenZone
{
    private const string Word = "forbidden";

    internal static void Draw(Canvas canvas, Box zone, int letters)
    {
        canvas.Area(zone, Colour.White, 55);
        canvas.Lines(letters / 8, Colour.Ink, 60, Hatch(zone, letters));
        canvas.Outline(zone, letters / 8, Colour.Ink);
    }

    /// <summary>The word, in the zone if it has room there.</summary>
    internal static void Name(Canvas canvas, Box zone, LabelRoom room, int letters)
    {
        var height = CornerName.HeightOf(letters);
        var width = StrokeFont.WidthOf(Word, height);
        var box = room.Across(zone, width, height);
        canvas.Label(Word, new(box.Left, box.Bottom), height, Colour.Ink);
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
