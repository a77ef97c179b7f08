using Splitter.Cutting.Tapes;

namespace Splitter.Stitching.Estimates;

/// <summary>Stitches that artwork came with are counted.</summary>
internal static class KeptEstimate
{
    internal static PieceEstimate Of(KeptPiece piece)
    {
        var blocks = KeptStitcher.Stitch(piece);
        return new(blocks.Sum(b => b.Stitches.Length), blocks.Length);
    }
}
