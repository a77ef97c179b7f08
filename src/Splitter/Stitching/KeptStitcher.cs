using System.Collections.Immutable;
using Splitter.Artwork.Tapes;
using Splitter.Cutting.Tapes;

namespace Splitter.Stitching;

/// <summary>Stitches that artwork came with: they stay as they are, and what was cut off is tied.</summary>
internal static class KeptStitcher
{
    internal static ImmutableArray<Block> Stitch(KeptPiece piece) =>
        [.. piece.Threads.Select(thread => Sewn(piece.Shape.Id, thread))];

    private static Block Sewn(string of, KeptThread thread)
    {
        ImmutableArray<Stitch> path =
        [
            .. thread.Stitches.Select(s => new Stitch(s.At, UseOf(s.Kind)) { Source = s.Source }),
        ];
        // A lone hole cannot be tied.
        var tied = path.Length < 2 ? default : thread.IsTied;
        return new(of, Ties.Tied(path, tied.Start, tied.End)) { IsCutBefore = thread.IsCutBefore, IsTied = tied };
    }

    private static StitchUse UseOf(StitchKind kind) =>
        kind switch
        {
            StitchKind.Tie => StitchUse.Tie,
            StitchKind.Underlay => StitchUse.Underlay,
            StitchKind.Travel => StitchUse.Travel,
            StitchKind.Fill => StitchUse.Fill,
            StitchKind.Satin => StitchUse.Satin,
            StitchKind.Run => StitchUse.Run,
            _ => throw new InvalidOperationException($"No use is known for {kind}."),
        };
}
