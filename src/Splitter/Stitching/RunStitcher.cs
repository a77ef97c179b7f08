using System.Collections.Immutable;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Stitching.Runs;

namespace Splitter.Stitching;

/// <summary>Runs: lines of stitches along the lines of the piece. Lines that hang together are one block.</summary>
internal static class RunStitcher
{
    internal static ImmutableArray<Block> Stitch(RunPiece piece) =>
        [.. RunWalks.Of(piece.Lines, piece.Shape.Style).Select(walk => Sewn(piece.Shape.Id, walk)).OfType<Block>()];

    /// <summary>A line of stitches as a block; null when it is too short to sew.</summary>
    internal static Block? Sewn(string of, ImmutableArray<Point> line) =>
        Ties.Fasten(of, line.Select(p => new Stitch(p, StitchUse.Run))) is { } block
            ? block with
            {
                Line = line,
            }
            : null;
}
