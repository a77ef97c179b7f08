using Splitter.Recipes;

namespace Splitter.Planning.Fit;

/// <summary>How a predicted misfit compares with what covers it.</summary>
internal static class JoinFit
{
    /// <summary>
    /// How far the rows of both sides lie over each other at least, µm: those that reach less, and where the seam runs up to
    /// the edge of a field, what that leaves of them.
    /// </summary>
    internal static double Covered(PartJoin join, EdgeRule edges)
    {
        var reach = Overlaps.Short(join.Overlap, edges);
        return reach + Math.Min(reach, join.Narrowest);
    }

    /// <summary>
    /// The misfit that weighs most on the overlap, along the seam or where others meet it, and what covers it, µm. What the
    /// edge of a field takes away from one side counts along the seam only.
    /// </summary>
    internal static (double Misfit, double Covered) Worst(PartJoin join, EdgeRule edges)
    {
        var (along, junctions) = (Covered(join, edges), Overlaps.Together(join.Overlap, edges));
        return join.AtJunctions / junctions > join.Within95 / along
            ? (join.AtJunctions, junctions)
            : (join.Within95, along);
    }

    /// <summary>More often than once in 20 times the misfit is not covered.</summary>
    internal static bool Exceeds(PartJoin join, EdgeRule edges)
    {
        var (misfit, covered) = Worst(join, edges);
        return misfit > covered;
    }
}
