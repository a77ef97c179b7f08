using Splitter.Recipes;

namespace Splitter.Planning;

/// <summary>
/// How far the two sides of a seam lie over each other, and what misfit that covers. What counts is how far every row
/// reaches: a part that comes out one row further up meets short rows with short ones.
/// </summary>
internal static class Overlaps
{
    /// <summary>
    /// With interleaved edges every other row reaches past the seam by this share of the overlap only, and its
    /// counterpart in the other part by all of it: rows end on two lines instead of one. A smaller share would need a
    /// wider overlap for the same misfit, a larger one would bring the two lines within a thread's width of each other.
    /// </summary>
    internal const double ShortShare = 0.6;

    /// <summary>How far both sides together lie over each other at least, for a reach of each side in µm.</summary>
    internal static double Together(double reach, EdgeRule edges) => 2 * Short(reach, edges);

    /// <summary>The reach of each side that makes both together lie over each other this far, µm.</summary>
    internal static double ReachFor(double together, EdgeRule edges) => together / 2 / Short(1, edges);

    /// <summary>How far the shorter rows reach, µm.</summary>
    internal static double Short(double reach, EdgeRule edges) =>
        edges == EdgeRule.Interleaved ? reach * ShortShare : reach;
}
