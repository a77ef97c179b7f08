using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>Straight pieces of lines by place, quick to find again.</summary>
internal sealed class SegmentBins<T>
{
    /// <summary>Side of a bin, µm: outlines have vertices at such distances.</summary>
    private const int Side = 2 * Units.Millimetre;

    /// <summary>By row and column, in one number.</summary>
    private readonly Dictionary<int, List<Segment>> bins = [];

    /// <summary>Columns and rows that hold anything.</summary>
    private Box used = Box.Empty;

    internal readonly record struct Segment(Point A, Point B, T Tag);

    internal void Add(Point a, Point b, T tag)
    {
        var segment = new Segment(a, b, tag);
        var count = Pieces(a, b);
        for (var k = 0; k < count; k++)
        {
            var piece = Piece(a, b, k, count);
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
        var count = Pieces(from, to);
        for (var k = 0; k < count; k++)
            found = In(Piece(from, to, k, count), found);
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

    /// <summary>A long slanting line has a large box: it is taken in so many pieces.</summary>
    private static int Pieces(Point from, Point to) => Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) / Side));

    /// <summary>The bins of a piece.</summary>
    private static Box Piece(Point from, Point to, int k, int count) =>
        BinsOf(Box.Around([from.Towards(to, (double)k / count), from.Towards(to, (k + 1.0) / count)]).Grown(1));

    /// <summary>Columns and rows of the bins that a box comes into.</summary>
    private static Box BinsOf(Box box) => new(box.Left / Side, box.Top / Side, box.Right / Side, box.Bottom / Side);

    /// <summary>
    /// Sixteen bits each reach 65 m to all sides. Numbers of 64 bits are hashed so that all bins of a diagonal would
    /// come into one place.
    /// </summary>
    private static int Key(int column, int row) => (row << 16) | (ushort)column;
}
