using Splitter.Recipes;

namespace Splitter.Planning;

/// <summary>How a predicted misfit compares with what covers it; micrometres.</summary>
internal static class JoinFit
{
    /// <summary>
    /// A misfit with equal normal errors on both axes stays below this many times its root mean square 19 times in 20:
    /// the Rayleigh distribution's 95 % quantile, sqrt(-ln 0.05).
    /// </summary>
    private static readonly double Usually = Math.Sqrt(-Math.Log(0.05));

    /// <summary>The misfit that is not exceeded 19 times in 20.</summary>
    internal static double Usual(PartJoin join) => join.PredictedError * Usually;

    /// <summary>How far both sides together lie over each other.</summary>
    internal static double Covered(PartJoin join, EdgeRule edges) => Overlaps.Together(join.Overlap, edges);

    /// <summary>The misfit is not sure to be covered.</summary>
    internal static bool Exceeds(PartJoin join, EdgeRule edges) => Usual(join) > Covered(join, edges);
}
