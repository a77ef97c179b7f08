using System.Collections.Immutable;
using Splitter.Outputs;

namespace Splitter.Checking;

/// <summary>How a set as it was differs from the same set as it is now, on disk or as the recipe makes it.</summary>
/// <param name="Files">Every file that is not the same to the byte, those of the later set first, in its order.</param>
/// <param name="Parts">What differs at the machine, for each part whose tape or manifest differs.</param>
internal sealed record SetDifferences(
    string Hoop,
    ImmutableArray<FileDifference> Files,
    ImmutableArray<PartDifference> Parts
)
{
    /// <summary>Every file is there and the same, and no other.</summary>
    internal bool AreNone => Files.IsEmpty;

    /// <summary>What the manifests on both sides say of all parts together; null where one says nothing.</summary>
    internal KnownTotals? TotalsBefore { get; init; }

    /// <inheritdoc cref="TotalsBefore"/>
    internal KnownTotals? TotalsAfter { get; init; }

    /// <summary>The versions of the programs that made the two, where they are not the same.</summary>
    internal (string Before, string After)? Versions { get; init; }

    /// <summary>What the manifests on both sides say that the sets were made of; null where one says nothing.</summary>
    internal (KnownOrigin Before, KnownOrigin After)? Origins { get; init; }

    /// <summary>How much a reviewer should make of it.</summary>
    internal DifferenceWeight Weight =>
        AreNone ? DifferenceWeight.None
        : Files.Any(f => f.IsSewnOtherwise) ? DifferenceWeight.Stitches
        : !Parts.IsEmpty ? DifferenceWeight.Work
        : DifferenceWeight.Papers;
}

/// <summary>How much two sets differ.</summary>
internal enum DifferenceWeight
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>
    /// In pictures, sheets, lists or the manifest alone: what is sewn, and what the person does, is the same.
    /// </summary>
    Papers,

    /// <summary>
    /// All tapes are the same, but not where the cloth is set, what the person does at a stop, or with which thread.
    /// </summary>
    Work,

    /// <summary>In what a machine sews.</summary>
    Stitches,
}

/// <summary>What is the matter with a file.</summary>
internal enum FileState
{
    /// <summary>The later set has it, and the earlier has not: missing on disk, or new.</summary>
    Missing,

    /// <summary>The earlier set has it, and the later has it no more.</summary>
    Extra,

    /// <summary>Both have it, with other bytes.</summary>
    Changed,
}

/// <summary>A file that is not the same in both sets.</summary>
internal sealed record FileDifference(string Path, FileState State)
{
    /// <summary>A tape that sews the same under another label: its recipe has another title.</summary>
    internal bool IsLabelAlone { get; init; }

    /// <summary>A tape that is missing, too many, or sews something else.</summary>
    internal bool IsSewnOtherwise => PartFiles.IsTape(Path) && !IsLabelAlone;
}

/// <summary>
/// What differs in a part, by tape or by manifest: "before" in the earlier set, "after" in the later. Millimetres.
/// </summary>
internal sealed record PartDifference
{
    internal required string Letter { get; init; }

    internal required int StitchesBefore { get; init; }

    internal required int StitchesAfter { get; init; }

    /// <summary>How far the hoop's middle moved on the drawing.</summary>
    internal required double FieldMovedMm { get; init; }

    /// <summary>The hoop's turn, degrees clockwise.</summary>
    internal required int TurnBefore { get; init; }

    internal required int TurnAfter { get; init; }

    /// <summary>Shapes and marks whose stitches differ on the drawing, in sewing order.</summary>
    internal required ImmutableArray<ShapeDifference> Shapes { get; init; }

    /// <summary>Stitches that are not sewn any more and lie near nothing that is sewn now.</summary>
    internal required ImmutableArray<GoneStitches> Gone { get; init; }

    /// <summary>Steps that change their thread.</summary>
    internal required ImmutableArray<ThreadDifference> Threads { get; init; }

    /// <summary>Stitches of one side whose needle holes the other does not have.</summary>
    internal required int StitchesAdded { get; init; }

    /// <inheritdoc cref="StitchesAdded"/>
    internal required int StitchesRemoved { get; init; }

    /// <summary>Corners that are elsewhere on the drawing, new, or gone.</summary>
    internal required ImmutableArray<CornerDifference> Corners { get; init; }

    internal required int StepsBefore { get; init; }

    internal required int StepsAfter { get; init; }

    /// <summary>Steps that only one side has.</summary>
    internal required ImmutableArray<StepDifference> OtherSteps { get; init; }

    /// <summary>Steps after which the person does something else.</summary>
    internal required ImmutableArray<StopDifference> OtherStops { get; init; }

    /// <summary>Why the two tapes could not be compared; null when they could.</summary>
    internal string? Unreadable { get; init; }
}

/// <summary>What differs in a shape of a part, or in a mark.</summary>
/// <param name="Shape">Its id; a corner's, a fold's or a check's for marks.</param>
/// <param name="MovedMm">
/// The greatest distance from any of its stitches to the nearest of the other tape, on the drawing; null when it was
/// not sewn before.
/// </param>
internal sealed record ShapeDifference(string Shape, double? MovedMm, int StitchesBefore, int StitchesAfter);

/// <summary>A run of stitches that is gone, and its middle on the drawing.</summary>
/// <param name="Of">The corner that it marked, else its step and thread: a tape names no shapes.</param>
internal sealed record GoneStitches(int Stitches, double XMm, double YMm, string Of);

/// <summary>A step that is new, or gone.</summary>
/// <param name="Step">Its number on the side that has it.</param>
internal sealed record StepDifference(int Step, string? Thread, bool IsNew);

/// <summary>What the person does after a step; null for no stop.</summary>
internal sealed record StopDifference(int Step, string? Before, string? After);

/// <summary>Another thread for a step.</summary>
internal sealed record ThreadDifference(int Step, string? Before, string? After);

/// <summary>What became of a corner.</summary>
/// <param name="MovedMm">Null when it is new or gone.</param>
internal sealed record CornerDifference(string Id, double? MovedMm, bool IsNew)
{
    /// <summary>What the stitches that mark it are called.</summary>
    internal string Mark => MarkOf(Id);

    internal static string MarkOf(string id) => $"corner {id}";
}
