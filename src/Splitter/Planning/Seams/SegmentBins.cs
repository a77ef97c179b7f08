using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>Straight pieces of lines by place, quick to find again.</summary>
internal sealed class SegmentBins<T>
{
    /// <summary>Side of a bin, µm: outlines have vertices at such distances.</summary>
    private const int Side = 2 * Units.Millimetre;

    /// <summary>By row and column, in one number.</summary>
    private readonly Dictionary<long, List<Segment>> bins = [];

    /// <summary>Columns and rows that hold anything.</summary>
    private Box used = Box.Empty;

    internal readonly record struct Segment(Point A, Point B, T Tag);

    internal void Add(Point a, Point b, T tag)
    {
        var segment = new Segment(a, b, tag);
        foreach (var piece in Along(a, b))
        {
            used = used.Joined(piece);
            for (var row = piece.Top; row <= piece.Bottom; row++)
            for (var column = piece.Left; column <= piece.Right; column++)
            {
                if (!bins.TryGetValue(Key(column, row), out var list))
                    bins[Key(column, row)] = list = [];
                if (list.Count == 0 || !list[^1].Equals(segment))
                    list.Add(segment);
            }
        }
    }

    /// <summary>All that may come into a box; some come more than once.</summary>
    internal IReadOnlyList<Segment> Near(Box box) => In(BinsOf(box), null) ?? [];

    /// <summary>All that may come near a straight line; some come more than once.</summary>
    internal IReadOnlyList<Segment> Near(Point from, Point to)
    {
        if (!BinsOf(Box.Around([from, to]).Grown(1)).Meets(used))
            return [];
        List<Segment>? found = null;
        foreach (var piece in Along(from, to))
            found = In(piece, found);
        return found ?? [];
    }

    private List<Segment>? In(Box range, List<Segment>? found)
    {
        range = range.Common(used);
        for (var row = range.Top; row <= range.Bottom; row++)
        for (var column = range.Left; column <= range.Right; column++)
            if (bins.TryGetValue(Key(column, row), out var list))
                (found ??= []).AddRange(list);
        return found;
    }

    /// <summary>The bins of a line. A long slanting one has a large box: it is taken in pieces.</summary>
    private static IEnumerable<Box> Along(Point from, Point to)
    {
        var count = Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) / Side));
        for (var k = 0; k < count; k++)
        {
            var (a, b) = (from.Towards(to, (double)k / count), from.Towards(to, (k + 1.0) / count));
            yield return BinsOf(Box.Around([a, b]).Grown(1));
        }
    }

    /// <summary>Columns and rows of the bins that a box comes into.</summary>
    private static Box BinsOf(Box box) => new(Bin(box.Left), Bin(box.Top), Bin(box.Right), Bin(box.Bottom));

    private static int Bin(int value) => (int)Math.Floor(value / (double)Side);

    private static long Key(int column, int row) => ((long)row << 32) | (uint)column;
}
