using System.Collections.Immutable;
using Splitter.Artwork.Tapes;
using Splitter.Geometry;

namespace Splitter.Cutting.Tapes;

/// <summary>Where a needle hole of a part comes from.</summary>
internal enum StitchSource
{
    /// <summary>Splitter makes it: ties, ways from row to row along a seam.</summary>
    Made,

    /// <summary>The tape's own, in this part and no other.</summary>
    Original,

    /// <summary>On a stitch that no field holds whole: it is sewn as two.</summary>
    Divided,

    /// <summary>Of the tape, or on a stitch of it, past a seam: the part beside it sews the same once more.</summary>
    Repeated,
}

/// <summary>A needle hole of what a part keeps of a tape.</summary>
internal readonly record struct KeptStitch(Point At, StitchKind Kind, StitchSource Source);

/// <summary>A stretch of a tape that one part sews without moving the needle.</summary>
internal sealed record KeptThread(ImmutableArray<KeptStitch> Stitches)
{
    /// <summary>Number of the original thread that it begins on.</summary>
    public required int Number { get; init; }

    /// <summary>It begins where that does, and ends where that ends.</summary>
    public required (bool Starts, bool Ends) IsWhole { get; init; }

    /// <summary>A seam has cut it off there, so that it must be tied.</summary>
    public (bool Start, bool End) IsTied { get; init; }

    /// <summary>Whether the thread is cut before it; null where that goes by the distance.</summary>
    public bool? IsCutBefore { get; init; }
}

/// <summary>What one hooping sews of a shape that came as stitches.</summary>
internal sealed record KeptPiece : Piece
{
    /// <summary>In sewing order.</summary>
    public required ImmutableArray<KeptThread> Threads { get; init; }

    /// <summary>
    /// It has the thread of an earlier piece, and the tape does not stop between the two for anything but a change.
    /// </summary>
    internal bool IsSewnOnFrom(KeptPiece earlier) =>
        Shape.Thread == earlier.Shape.Thread && Shape.Original[0].Pauses == earlier.Shape.Original[0].Pauses;

    internal override Box Bounds => Box.Around(Threads.SelectMany(t => t.Stitches).Select(s => s.At));
}
