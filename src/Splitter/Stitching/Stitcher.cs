using System.Collections.Immutable;
using Splitter.Cutting;
using Splitter.Cutting.Tapes;

namespace Splitter.Stitching;

/// <summary>A piece and the blocks that sew it, in sewing order.</summary>
internal sealed record SewnPiece(Piece Piece, ImmutableArray<Block> Blocks);

/// <summary>Pieces to stitches.</summary>
internal static class Stitcher
{
    /// <summary>Stitches every piece, on as many threads as allowed, in the pieces' order.</summary>
    internal static ImmutableArray<SewnPiece> Stitch(ImmutableArray<Piece> pieces, int jobs) =>
        InOrder.Select(pieces, jobs, piece => new SewnPiece(piece, Sew(piece)));

    private static ImmutableArray<Block> Sew(Piece piece) =>
        piece switch
        {
            FillPiece fill => FillStitcher.Stitch(fill),
            SatinPiece satin => SatinStitcher.Stitch(satin),
            RunPiece run => RunStitcher.Stitch(run),
            KeptPiece kept => KeptStitcher.Stitch(kept),
            _ => throw new InvalidOperationException($"No stitches are known for {piece.GetType().Name}."),
        };
}
