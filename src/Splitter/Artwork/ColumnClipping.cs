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
    /// The stretches of a column whose rungs lie inside a region from end to end, in the column's direction: what a
    /// field can sew of a column whose middle it holds.
    /// </summary>
    internal static IEnumerable<Column> Within(Column column, PathClipping region) =>
        SpansWithin(column.Rungs, region).Select(span => Between(column, span.From, span.To));

    /// <summary>
    /// The stretches of a column of which anything lies outside a region, in the column's direction: what a later shape
    /// does not hide from edge to edge.
    /// </summary>
    internal static IEnumerable<Column> Visible(Column column, PathClipping hidden)
    {
        var from = 0.0;
        foreach (var span in SpansWithin(column.Rungs, hidden))
        {
            if (span.From > from)
                yield return Between(column, from, span.From);
            from = span.To;
        }
        if (from < column.Rungs.Length - 1)
            yield return Between(column, from, column.Rungs.Length - 1);
    }

    private static IEnumerable<(double From, double To)> SpansWithin(ImmutableArray<Rung> rungs, PathClipping region) =>
        from left in region.Spans([.. rungs.Select(r => r.Left)], inside: true)
        from right in region.Spans([.. rungs.Select(r => r.Right)], inside: true)
        from middle in region.Spans([.. rungs.Select(r => r.Middle)], inside: true)
        let common = (
            From: Math.Max(middle.From, Math.Max(left.From, right.From)),
            To: Math.Min(middle.To, Math.Min(left.To, right.To))
        )
        where common.From < common.To
        select common;

    private static Column Between(Column column, double from, double to) =>
        from == 0 && to == column.Rungs.Length - 1 ? column : new([.. Stretch(column.Rungs, from, to)]);

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
