using System.Collections.Immutable;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Stitching.Satins;

namespace Splitter.Stitching;

/// <summary>
/// Satin: stitches across the columns of a piece, evenly dense along the longer edge. Columns that touch are one block,
/// without a trim inside; the nearest block is next.
/// </summary>
internal static class SatinStitcher
{
    internal static ImmutableArray<Block> Stitch(SatinPiece piece)
    {
        ImmutableArray<ColumnLine> columns = [.. piece.Columns.Select(c => new ColumnLine(c)).Where(c => c.Length > 0)];
        var sewer = new ColumnSewer(columns, ColumnJoints.Of(columns), piece.Shape.Style);
        var blocks = ImmutableArray.CreateBuilder<Block>();
        while (Nearest(columns, sewer, blocks.Count > 0 ? blocks[^1].End : null) is { } entry)
            if (Ties.Fasten(piece.Shape.Id, sewer.Sew(entry.Column, entry.Place)) is { } block)
                blocks.Add(block);
        return blocks.ToImmutable();
    }

    /// <summary>The end of a column that is nearest to where the needle is; the first column's start to begin with.</summary>
    private static (int Column, double Place)? Nearest(
        ImmutableArray<ColumnLine> columns,
        ColumnSewer sewer,
        Point? needle
    ) =>
        Enumerable
            .Range(0, columns.Length)
            .Where(i => !sewer.IsBegun(i))
            .SelectMany(i => new[] { (Column: i, Place: 0.0), (Column: i, Place: columns[i].Length) })
            .OrderBy(e => needle is { } at ? columns[e.Column].At(e.Place).Middle.DistanceTo(at) : 0)
            .ThenBy(e => e)
            .Cast<(int, double)?>()
            .FirstOrDefault();
}
