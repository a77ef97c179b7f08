using Splitter.Recipes;

namespace Splitter.Planning;

/// <summary>How far the two sides of a seam lie over each other.</summary>
internal static class Overlaps
{
    /// <summary>
    /// With interleaved edges every other row reaches past the seam by this share of the overlap only, and its
    /// counterpart in the other part by all of it: rows end on two lines instead of one, and half as much thread lies
    /// double. Common practice, no source.
    /// </summary>
    internal const double ShortShare = 0.25;

    /// <summary>How far both sides together lie over each other, for a reach of each side in µm.</summary>
    internal static double Together(double reach, EdgeRule edges) =>
        edges == EdgeRule.Interleaved ? reach * (1 + ShortShare) : reach * 2;

    /// <summary>The reach of each side that makes both together lie over each other this far, µm.</summary>
    internal static double ReachFor(double together, EdgeRule edges) =>
        edges == EdgeRule.Interleaved ? together / (1 + ShortShare) : together / 2;
}
