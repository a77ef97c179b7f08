using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Tapes;

/// <summary>What a stitch of a tape is for, as far as its geometry tells.</summary>
internal enum StitchKind
{
    /// <summary>Fastens the thread.</summary>
    Tie,

    /// <summary>Lies below what is sewn over it.</summary>
    Underlay,

    /// <summary>Goes to where sewing continues, hidden by what is sewn with it.</summary>
    Travel,

    /// <summary>A fill row.</summary>
    Fill,

    /// <summary>To and fro across a column.</summary>
    Satin,

    /// <summary>Along a line.</summary>
    Run,
}

/// <summary>How the needle comes to where a thread begins.</summary>
internal enum ThreadArrival
{
    /// <summary>The thread was cut, or changed.</summary>
    Cut,

    /// <summary>It moved without sewing, and the thread with it.</summary>
    Loose,

    /// <summary>It is in that hole already: another object ended there.</summary>
    GoesOn,
}

/// <summary>A needle hole of a tape, where it lies on the drawing.</summary>
/// <param name="Kind">What the stitch that ends here is for.</param>
/// <param name="Row">Of a fill, the number of its row; neighbours are even and odd in turn.</param>
internal readonly record struct OriginalStitch(Point At, StitchKind Kind, int Row)
{
    /// <summary>It is there for what is sewn over it, and shows nowhere.</summary>
    internal bool IsBelow => Kind is StitchKind.Underlay or StitchKind.Travel or StitchKind.Tie;
}

/// <summary>What a tape sews of one object without moving the needle.</summary>
/// <param name="Number">Through the whole tape, in sewing order.</param>
/// <param name="Block">Number of the colour block, from 1.</param>
internal sealed record OriginalThread(
    int Number,
    int Block,
    ThreadArrival Start,
    ImmutableArray<OriginalStitch> Stitches
)
{
    /// <summary>
    /// How often the tape has stopped, up to its block, before a block of the same thread: such stops are there for
    /// something else than a change of thread.
    /// </summary>
    public int Pauses { get; init; }

    /// <summary>Its needle holes, without one that it shares with the thread before it.</summary>
    internal int OwnStitches => Stitches.Length - (Start == ThreadArrival.GoesOn ? 1 : 0);
}
