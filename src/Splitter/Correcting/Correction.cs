using System.Collections.Immutable;
using Splitter.Parts;
using Splitter.Planning;

namespace Splitter.Correcting;

/// <summary>A part moved onto the sewn work, to be sewn on in the same hooping.</summary>
/// <param name="Plan">
/// The plan as it is now: the part is set by nothing more, its corners for later parts have moved with it, and joins
/// have the errors that are expected now.
/// </param>
/// <param name="Part">What is left to sew, moved; crosses before it show whether the move is right.</param>
/// <param name="Joins">Those that a person will want to know of, what is not covered first.</param>
/// <param name="Offsets">What was measured.</param>
/// <param name="Checked">Of that what a cross checks, in the order of the crosses.</param>
internal sealed record Correction(
    Plan Plan,
    Part Part,
    RealignMove Move,
    ImmutableArray<JoinChange> Joins,
    ImmutableArray<MeasuredOffset> Offsets,
    ImmutableArray<MeasuredOffset> Checked
)
{
    /// <summary>Each measured place, and how far off it will still be, µm.</summary>
    public required ImmutableArray<(string At, double Off)> Left { get; init; }

    /// <summary>Crosses of its own are sewn by now, and have to come out.</summary>
    public required bool HasSewnCrosses { get; init; }
}

/// <summary>How a part was moved, as a person sees it with the hoop before them.</summary>
/// <param name="Verdict">What the offsets said.</param>
/// <param name="Right">How far its place in the middle of the hoop moves to the right, micrometres.</param>
/// <param name="Up">How far that moves up, micrometres.</param>
/// <param name="Degrees">How far the part turns about it, clockwise.</param>
/// <param name="Residual">Root mean square of the offsets that are left, micrometres.</param>
internal sealed record RealignMove(Verdict Verdict, int Right, int Up, double Degrees, double Residual)
{
    /// <summary>
    /// How much longer the part is along the warp, as a share; 0 unless the recipe lets it follow stretched cloth.
    /// </summary>
    public double Warp { get; init; }

    /// <summary>The same along the weft.</summary>
    public double Weft { get; init; }
}

/// <summary>What a correction does to a join.</summary>
/// <param name="Before">The join as planned.</param>
/// <param name="After">The same with what is expected now.</param>
internal sealed record JoinChange(PartJoin Before, PartJoin After)
{
    /// <summary>It is a join of this part.</summary>
    internal bool Joins(int hooping) => Before.Earlier == hooping || Before.Later == hooping;

    /// <summary>The overlap does not cover what is expected now, and it is more than was planned.</summary>
    internal bool Uncovers => !After.IsCovered && After.Within95 > Before.Within95;
}
