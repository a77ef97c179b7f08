using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>Straight pieces of lines by place, quick to find again.</summary>
internal sealed class SegmentBins<T>
{
    /// <summary>Side of a bin, µm: outlines have vertices at such distances.</summary>
    private const int Side = 2 * Units.Millimetre;

    /// <summary>By row and column, in one number.</summary>
    private readonly Dictionary<long, List<Segment>> bins = [];

    internal readonly record struct Segment(Point A, Point B, T Tag);

    internal void Add(Point a, Point b, T tag)
    {
        var segment = new Segment(a, b, tag);
        foreach (var bin in Along(a, b).SelectMany(piece => BinsOf(Box.Around([piece.From, piece.To]).Grown(1))))
        {
            if (!bins.TryGetValue(bin, out var list))
                bins[bin] = list = [];
            if (list.Count == 0 || !list[^1].Equals(segment))
                list.Add(segment);
        }
    }

    /// <summary>All that may come into a box; some come more than once.</summary>
    internal IEnumerable<Segment> Near(Box box)
    {
        foreach (var bin in BinsOf(box))
            if (bins.TryGetValue(bin, out var list))
                foreach (var segment in list)
                    yield return segment;
    }

    /// <summary>All that may come near a straight line; some come more than once.</summary>
    internal IEnumerable<Segment> Near(Point from, Point to)
    {
        if (bins.Count == 0)
            yield break;
        foreach (var (a, b) in Along(from, to))
        foreach (var bin in BinsOf(Box.Around([a, b]).Grown(1)))
            if (bins.TryGetValue(bin, out var list))
                foreach (var segment in list)
                    yield return segment;
    }

    /// <summary>A long slanting line has a large box: it is taken in pieces.</summary>
    private static IEnumerable<(Point From, Point To)> Along(Point from, Point to)
    {
        var count = Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) / Side));
        for (var k = 0; k < count; k++)
            yield return (from.Towards(to, (double)k / count), from.Towards(to, (k + 1.0) / count));
    }

    private static IEnumerable<long> BinsOf(Box box)
    {
        var (left, right, bottom) = (Bin(box.Left), Bin(box.Right), Bin(box.Bottom));
        for (var row = Bin(box.Top); row <= bottom; row++)
        for (var column = left; column <= right; column++)
            yield return ((long)row << 32) | (uint)column;

        static int Bin(int value) => (int)Math.Floor(value / (double)Side);
    }
}
