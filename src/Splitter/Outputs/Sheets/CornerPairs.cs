using System.Collections.Immutable;
using Splitter.Planning;

namespace Splitter.Outputs.Sheets;

/// <summary>How far the corners that a hooping is set by are from each other: to be checked with a ruler.</summary>
internal static class CornerPairs
{
    /// <summary>Every two of them, in their order, and µm from point to point.</summary>
    internal static ImmutableArray<(Corner One, Corner Other, double Length)> Of(Plan plan, Hooping hooping)
    {
        var taken = hooping.Takes.Select(i => plan.Corners[i]).ToList();
        return
        [
            .. taken.SelectMany(
                (one, i) => taken.Skip(i + 1).Select(other => (one, other, one.At.DistanceTo(other.At)))
            ),
        ];
    }
}
