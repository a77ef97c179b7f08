using Splitter.Cutting;
using Splitter.Stitching.Runs;

namespace Splitter.Stitching.Estimates;

/// <summary>Stitches of lines: known exactly, ties aside, since the walks along them are quickly found.</summary>
internal static class RunEstimate
{
    internal static PieceEstimate Of(RunPiece piece)
    {
        var walks = RunWalks.Of(piece.Lines, piece.Shape.Style);
        return new(walks.Sum(w => w.Length), walks.Length);
    }
}
