using Splitter.Diagnostics;

namespace Splitter.Correcting;

/// <summary>
/// How far the new stitch lies from where it should, as a person sees it with the hoop before them as the machine holds
/// it.
/// </summary>
/// <param name="At">The number of a cross of the part, or the name of a corner that the part is set by.</param>
/// <param name="Right">To the right, micrometres; to the left if negative.</param>
/// <param name="Up">Away from the person, towards the top of the hoop, micrometres.</param>
/// <param name="Place">Where it was said.</param>
internal sealed record MeasuredOffset(string At, int Right, int Up, Place Place)
{
    /// <summary>Only sideways or only upwards was read; else what is nought was read as that.</summary>
    internal bool IsOneWay { get; init; }
}
