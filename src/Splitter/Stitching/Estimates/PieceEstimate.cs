using Splitter.Cutting;
using Splitter.Cutting.Tapes;

namespace Splitter.Stitching.Estimates;

/// <summary>
/// About how much a piece is to sew, from its lengths and areas and the rules of stitches; nothing is stitched.
/// </summary>
/// <param name="Stitches">Ties, underlay and hidden ways included.</param>
/// <param name="Blocks">How often the thread begins anew.</param>
internal readonly record struct PieceEstimate(double Stitches, int Blocks)
{
    /// <summary>What fastening both ends of a block adds: <see cref="Ties"/>.</summary>
    private const int TieStitches = 6;

    internal static PieceEstimate Of(Piece piece)
    {
        if (piece is KeptPiece kept)
            return KeptEstimate.Of(kept);
        var (stitches, blocks) = piece switch
        {
            FillPiece fill => FillEstimate.Of(fill),
            SatinPiece satin => SatinEstimate.Of(satin),
            RunPiece run => RunEstimate.Of(run),
            _ => throw new InvalidOperationException($"No stitches are known for {piece.GetType().Name}."),
        };
        return new(stitches + (TieStitches * blocks), blocks);
    }
}
