using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork;

/// <summary>Divides satin columns by regions, across: a rung belongs to where its middle lies.</summary>
internal static class ColumnClipping
{
    /// <summary>
    /// The stretches of a column inside a region, or outside it, in the column's direction. New end rungs lie between
    /// their neighbours where the middle line meets the outline. A closed column's stretch runs on over its start.
    /// </summary>
    internal static ImmutableArray<Column> Keep(Column column, PathClipping region, bool inside)
    {
        var rungs = column.Rungs;
        var spans = region.Spans([.. rungs.Select(r => r.Middle)], inside);
        if (spans is [var whole] && whole.From == 0 && whole.To == rungs.Length - 1)
            return [column];
        var kept = spans.Select(span => Stretch(rungs, span.From, span.To)).Where(s => s.Count >= 2).ToList();
        if (rungs[0] == rungs[^1] && kept.Count > 1 && spans[0].From == 0 && spans[^1].To == rungs.Length - 1)
        {
            kept[^1].AddRange(kept[0].Skip(1));
            kept.RemoveAt(0);
        }
        return [.. kept.Select(s => new Column([.. s]))];
    }

    /// <summary>
    /// The stretches of a column whose rungs lie inside a region from end to end, in the column's direction: what a field
    /// can sew of a column whose middle it holds.
    /// </summary>
    internal static IEnumerable<Column> Within(Column column, PathClipping region)
    {
        var rungs = column.Rungs;
        return
        [
            .. from left in region.Spans([.. rungs.Select(r => r.Left)], inside: true)
            from right in region.Spans([.. rungs.Select(r => r.Right)], inside: true)
            let common = (From: Math.Max(left.From, right.From), To: Math.Min(left.To, right.To))
            where common.From < common.To
            select common is { From: 0 } && common.To == rungs.Length - 1
                ? column
                : new Column([.. Stretch(rungs, common.From, common.To)]),
        ];
    }

    private static List<Rung> Stretch(ImmutableArray<Rung> rungs, double from, double to)
    {
        var stretch = new List<Rung> { At(rungs, from) };
        for (var i = (int)Math.Floor(from) + 1; i < to; i++)
            stretch.Add(rungs[i]);
        stretch.Add(At(rungs, to));
        return stretch;
    }

    private static Rung At(ImmutableArray<Rung> rungs, double place)
    {
        var index = Math.Min((int)place, rungs.Length - 2);
        var (a, b, share) = (rungs[index], rungs[index + 1], place - index);
        return new(a.Left.Towards(b.Left, share), a.Right.Towards(b.Right, share));
    }
}
