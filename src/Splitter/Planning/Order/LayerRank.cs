using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Order;

/// <summary>
/// Among orders that differ only in the sequence of fields which have nothing to do with each other, the one that sews
/// least over what should lie on top: the drawing's lower shapes before the upper ones that cover their edges.
/// </summary>
internal static class LayerRank
{
    /// <summary>The same order and donors: every field still comes after those that it takes corners from.</summary>
    internal static FoundOrder Kept(Drawing drawing, Layout layout, FoundOrder found)
    {
        var before = Before(drawing, layout);
        var (fields, donors) = (new List<int> { found.Fields[0] }, new List<ImmutableArray<int>> { found.Donors[0] });
        while (fields.Count < found.Fields.Length)
        {
            // Of those whose donors are sewn, the one that fewest lower shapes of the rest would come after.
            var next = (
                from place in Enumerable.Range(1, found.Fields.Length - 1)
                let field = found.Fields[place]
                where !fields.Contains(field) && found.Donors[place].All(fields.Contains)
                let waits = found
                    .Fields.Where(f => f != field && !fields.Contains(f))
                    .Sum(f => before.GetValueOrDefault((f, field)))
                orderby waits, place
                select place
            ).First();
            fields.Add(found.Fields[next]);
            donors.Add(found.Donors[next]);
        }
        return found with { Fields = [.. fields], Donors = [.. donors] };
    }

    /// <summary>How many shapes that only the first field holds lie below ones that only the second holds.</summary>
    private static Dictionary<(int Lower, int Upper), int> Before(Drawing drawing, Layout layout)
    {
        var boxes = drawing.Shapes.Select(s => s.Footprint.Bounds).ToArray();
        var holders = boxes.Select(Holder).ToArray();
        var counts = new Dictionary<(int, int), int>();
        foreach (var (lower, upper) in BoxPairs.Meeting(boxes))
            if (holders[lower] is { } a && holders[upper] is { } b && a != b)
                counts[(a, b)] = counts.GetValueOrDefault((a, b)) + 1;
        return counts;

        int? Holder(Box box)
        {
            var all = Enumerable
                .Range(0, layout.Grounds.Length)
                .Where(i => layout.Grounds[i].Contains(box))
                .Take(2)
                .ToList();
            return all.Count == 1 ? all[0] : null;
        }
    }
}
