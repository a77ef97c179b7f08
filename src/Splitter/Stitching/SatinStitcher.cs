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
        var covered = Polygons.Containment(piece.Shape.Footprint);
        ImmutableArray<ColumnLine> columns =
        [
            .. piece.Columns.Select(c => new ColumnLine(c, covered)).Where(c => c.Length > 0),
        ];
        var ways = new JointWays(covered);
        var sewer = new ColumnSewer(columns, ColumnJoints.Of(columns, ways), ways, piece.Shape.Style, piece.IsCut);
        var blocks = ImmutableArray.CreateBuilder<Block>();
        var open = new Pool(columns.Select(c => Ends(c).Select(end => c.At(end).Middle)));
        while (open.Left > 0)
        {
            var (column, end) = open.Take(blocks.Count > 0 ? blocks[^1].End : null);
            var begins = Ends(columns[column])[end];
            var path = sewer.Sew(column, sewer.BeginningAt(column, begins));
            foreach (var sewn in sewer.Sewn)
                open.Remove(sewn);
            if (Ties.Fasten(piece.Shape.Id, path) is { } block)
                blocks.Add(block);
        }
        return blocks.ToImmutable();
    }

    /// <summary>The column of a piece that is a ring alone.</summary>
    internal static ColumnLine? Ring(SatinPiece piece) =>
        piece.Columns is [var column] && new ColumnLine(column) is { IsClosed: true, Length: > 0 } ring ? ring : null;

    /// <summary>
    /// Both ends of a column; first one on bare cloth, so that it is not tied where columns meet, if there is a choice.
    /// </summary>
    private static double[] Ends(ColumnLine column) =>
        column.IsOpenEnd(column.Length) && !column.IsOpenEnd(0) ? [column.Length, 0] : [0, column.Length];
}
