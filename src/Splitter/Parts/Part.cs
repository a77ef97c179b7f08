using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Planning;
using Splitter.Stitching;

namespace Splitter.Parts;

/// <summary>One hooping as it is sewn: ordered steps, a stop between them.</summary>
internal sealed record Part(Hooping Hooping, ImmutableArray<Step> Steps)
{
    /// <summary>A, B, … Z, AA, …</summary>
    public string Letter => Hooping.Letter;

    /// <summary>Names of corners on the cloth that come out before its body is sewn over them.</summary>
    public ImmutableArray<string> TakenOut { get; init; } = [];

    /// <summary>
    /// Where the needle goes without sewing before all else, so that the tape reaches as far as another.
    /// </summary>
    public ImmutableArray<FieldPoint> Visits { get; init; } = [];

    /// <summary>Where the hoop lies.</summary>
    public Field Field => Hooping.Field;
}

/// <summary>What a step is for; the manifest writes the same words.</summary>
internal enum StepKind
{
    /// <summary>Fold lines on the bare stabilizer.</summary>
    Placement,

    /// <summary>Corners of earlier parts on the bare stabilizer.</summary>
    Corners,

    /// <summary>Stitches on the cloth that show the fit.</summary>
    Alignment,

    /// <summary>The artwork.</summary>
    Body,

    /// <summary>Corners for later parts.</summary>
    NextCorners,
}

/// <summary>What is sewn without a stop, with one thread.</summary>
/// <param name="Number">From 1 within its part.</param>
/// <param name="Thread">Null for marks: any thread that contrasts.</param>
/// <param name="Moves">In sewing order.</param>
/// <param name="Actions">
/// What the person does when the machine stops after it, in this order; empty after the last step.
/// </param>
internal sealed record Step(
    int Number,
    StepKind Kind,
    SewThread? Thread,
    ImmutableArray<Move> Moves,
    ImmutableArray<string> Actions
)
{
    /// <summary>
    /// Which of the actions is the look with the needle at the holes of corners, where no cross shows the fit; null for
    /// none.
    /// </summary>
    public int? NeedleLook { get; init; }

    /// <summary>All that the person does at the stop; null after the last step.</summary>
    public string? Stop => Actions.IsEmpty ? null : string.Join(" ", Actions);
}

/// <summary>A block and how the needle comes to it.</summary>
/// <param name="Trim">The thread is cut before the needle moves.</param>
internal sealed record Move(Block Block, bool Trim);
