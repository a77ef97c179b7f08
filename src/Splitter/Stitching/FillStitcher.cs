using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Stitching.Fills;

namespace Splitter.Stitching;

/// <summary>
/// Fills: rows on a lattice that the whole artwork shares, to and fro, in sections that hidden travel joins. Each
/// polygon of the piece is one block, without a trim inside.
/// </summary>
internal static class FillStitcher
{
    internal static ImmutableArray<Block> Stitch(FillPiece piece)
    {
        var lattice = Lattice.Of((FillShape)piece.Shape);
        var region = ReferenceEquals(piece.EvenRows, piece.OddRows)
            ? piece.EvenRows
            : Polygons.Union(piece.EvenRows, piece.OddRows);
        var ground = new FillGround(RowScan.Of(region, lattice), throughBranches: true);
        var rows = SewnRows.Of(piece, lattice, ground.Scan);
        var router = new Router(ground, lattice.Spacing);
        var underlay = new Underlay(piece, ground, lattice, router);
        var order = new SectionOrder(ground, router);
        var sections = Enumerable.Range(0, ground.Sections).ToLookup(s => ground.Scan.Spans[ground.SpansOf(s)[0]].Of);
        var blocks = new List<Block>();
        for (var polygon = 0; polygon < region.Polygons.Length; polygon++)
        {
            ImmutableArray<int> own = [.. sections[polygon]];
            var path = own.IsEmpty
                ? Sliver.Sew(region.Polygons[polygon], lattice)
                : new PolygonSewer(ground, rows, lattice, router, order).Sew(own.AsSpan(), underlay, polygon);
            if (Ties.Fasten(piece.Shape.Id, path) is { } block)
                blocks.Add(block);
        }
        return [.. blocks];
    }
}
