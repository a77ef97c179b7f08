using Splitter.Recipes;

namespace Splitter.Planning.Fit;

/// <summary>How a predicted misfit compares with what covers it.</summary>
internal static class JoinFit
{
    /// <summary>How far both sides together lie over each other, µm.</summary>
    internal static double Covered(PartJoin join, EdgeRule edges) => Overlaps.Together(join.Overlap, edges);

    /// <summary>More often than once in 20 times the misfit is not covered.</summary>
    internal static bool Exceeds(PartJoin join, EdgeRule edges) => join.Within95 > Covered(join, edges);
}
