using System.Collections.Immutable;

namespace Splitter.Checking;

/// <summary>How the files of one set on disk differ from what the recipe makes now.</summary>
/// <param name="Files">Every file that is not the same to the byte, in the order in which files are made.</param>
/// <param name="Parts">What that means at the machine, for each part whose tape differs.</param>
internal sealed record SetDifferences(
    string Hoop,
    ImmutableArray<FileDifference> Files,
    ImmutableArray<PartDifference> Parts
)
{
    /// <summary>Every file is there and the same, and no other.</summary>
    internal bool AreNone => Files.IsEmpty;
}

/// <summary>What is the matter with a file.</summary>
internal enum FileState
{
    /// <summary>The recipe makes it, and it is not on disk.</summary>
    Missing,

    /// <summary>An earlier run made it, and the recipe does not make it any more.</summary>
    Extra,

    /// <summary>It is there with other bytes.</summary>
    Changed,
}

/// <summary>A file that is not what the recipe makes now.</summary>
internal sealed record FileDifference(string Path, FileState State);

/// <summary>What differs in a part, the tape on disk being "before" and the recipe's "after". Millimetres.</summary>
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

    /// <summary>Why the tape on disk could not be compared; null when it could.</summary>
    internal string? Unreadable { get; init; }
}

/// <summary>What differs in a shape of a part, or in a mark.</summary>
/// <param name="Shape">Its id; a corner's, a fold's or a check's for marks.</param>
/// <param name="MovedMm">
/// The greatest distance from any of its stitches to the nearest of the other tape, on the drawing; null when it was not
/// sewn before.
/// </param>
internal sealed record ShapeDifference(string Shape, double? MovedMm, int StitchesBefore, int StitchesAfter);

/// <summary>A run of stitches that is gone, and its middle on the drawing.</summary>
internal sealed record GoneStitches(int Stitches, double XMm, double YMm);

/// <summary>Another thread for a step.</summary>
internal sealed record ThreadDifference(int Step, string? Before, string? After);
