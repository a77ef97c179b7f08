using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Stitching.Satins;

namespace Splitter.Stitching.Estimates;

/// <summary>Stitches of satin columns: across them along the longer edge, and the way out below.</summary>
internal static class SatinEstimate
{
    /// <summary>Both ends of the first and of the last rung: <see cref="Zigzag"/>.</summary>
    private const int EndStitches = 3;

    internal static PieceEstimate Of(SatinPiece piece)
    {
        ColumnLine[] columns = [.. piece.Columns.Select(c => new ColumnLine(c)).Where(c => c.Length > 0)];
        var blocks = Groups(columns);
        var underlay = piece.Shape.Style.Underlay;
        // A column without underlay has a way below it only where the thread comes or goes by another column.
        var ways = !underlay.IsEmpty || blocks < columns.Length;
        return new(columns.Sum(c => Across(c, piece.Shape.Style) + (ways ? Below(c, underlay) : 0)), blocks);
    }

    private static double Across(ColumnLine column, SewStyle style)
    {
        // A stitch is as long as the column is wide, and reaches past both edges.
        var length = column.MeanWidth + (2.0 * style.Pull);
        var splits =
            length <= StitchRules.WidestSatin
                ? 0
                : Math.Ceiling(length / (StitchRules.WidestSatin - Zigzag.SplitInset)) - 1;
        return Math.Ceiling(column.Length / (style.RowSpacing / 2.0)) * (1 + splits) + EndStitches;
    }

    private static double Below(ColumnLine column, ImmutableArray<UnderlayKind> kinds)
    {
        if (column.Length < ColumnSewer.ShortestOut)
            return 0;
        var length = column.IsClosed ? column.Length : column.Length - ColumnSewer.EndInset;
        var way = kinds.Contains(UnderlayKind.Cross)
            ? length / (ColumnUnderlay.OpenSpacing / 2)
            : length / ColumnUnderlay.RunStitch;
        var edges = kinds.Contains(UnderlayKind.Edge) && column.MeanWidth >= ColumnUnderlay.NarrowestEdged;
        return Math.Ceiling(way)
            + (edges && !column.IsClosed ? 2 * Math.Ceiling(length / ColumnUnderlay.RunStitch) : 0);
    }

    /// <summary>Columns that lie at each other are sewn in one go.</summary>
    private static int Groups(ColumnLine[] columns)
    {
        var group = Enumerable.Range(0, columns.Length).ToArray();
        foreach (var (a, b) in BoxPairs.Meeting(columns.Select(c => c.Bounds)))
            group[Root(a)] = Root(b);
        return group.Where((parent, i) => parent == i).Count();

        int Root(int i)
        {
            while (group[i] != i)
                i = group[i] = group[group[i]];
            return i;
        }
    }
}
