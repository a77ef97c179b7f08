using System.Collections.Immutable;
using Splitter.Cutting.Tapes;
using Splitter.Geometry;

namespace Splitter.Stitching;

/// <summary>What a stitch is for.</summary>
internal enum StitchUse
{
    /// <summary>Fastens the thread at an end.</summary>
    Tie,

    /// <summary>Below the visible stitches.</summary>
    Underlay,

    /// <summary>Goes to where sewing continues, hidden under later stitches.</summary>
    Travel,

    /// <summary>A fill row.</summary>
    Fill,

    /// <summary>Across a column.</summary>
    Satin,

    /// <summary>Along a line.</summary>
    Run,

    /// <summary>A placement line, corner or alignment stitch.</summary>
    Mark,
}

/// <summary>One needle penetration, in design space on the tape's 0.1 mm grid.</summary>
/// <param name="At">Where the needle goes in.</param>
/// <param name="Use">What the stitch that ends here is for.</param>
internal readonly record struct Stitch(Point At, StitchUse Use)
{
    /// <summary>Where it comes from.</summary>
    internal StitchSource Source { get; init; }
}

/// <summary>
/// Continuous sewing with one thread: the needle comes to the first stitch without sewing, and sews from there to the
/// last. Tied at both ends, unless the thread goes on into the next block.
/// </summary>
/// <param name="Of">Id of the shape or mark that is sewn.</param>
/// <param name="Stitches">At least two, but for a lone hole of a tape.</param>
internal sealed record Block(string Of, ImmutableArray<Stitch> Stitches)
{
    /// <summary>
    /// Of a run, where the needle goes in, ties aside: it may be sewn from either end, a closed one from any hole.
    /// Empty for what is sewn in layers, which has one right way.
    /// </summary>
    internal ImmutableArray<Point> Line { get; init; } = [];

    /// <summary>
    /// Whether the thread is cut before it, as the artwork has it; null where that goes by the distance.
    /// </summary>
    internal bool? IsCutBefore { get; init; }

    /// <summary>
    /// At which ends we tie it; else the artwork does, or goes on. What we tie may be sewn on by another way.
    /// </summary>
    internal (bool Start, bool End) IsTied { get; init; } = (true, true);

    /// <summary>At which ends short stitches of the path itself are its tie.</summary>
    internal (bool Start, bool End) IsShortTied { get; init; }

    /// <summary>Where it starts.</summary>
    public Point Start => Stitches[0].At;

    /// <summary>Where it ends.</summary>
    public Point End => Stitches[^1].At;

    /// <summary>The box around its stitches.</summary>
    internal Box Bounds
    {
        get
        {
            var box = Box.Empty;
            foreach (var stitch in Stitches)
                box = box.Including(stitch.At);
            return box;
        }
    }
}
