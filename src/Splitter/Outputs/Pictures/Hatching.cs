using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>Ground that is told from the rest by slanting lines.</summary>
internal static class Hatching
{
    /// <summary>Lines up to the right, evenly spaced on the page so that zones side by side look like one.</summary>
    internal static ImmutableArray<ImmutableArray<Point>> Of(Box zone, int spacing)
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
