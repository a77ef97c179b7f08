using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Planning;

namespace Splitter.Outputs.Sheets;

/// <summary>How far off a part may come out before it is set again, µm: what the overlap of its join covers.</summary>
internal static class AlignmentLimit
{
    /// <summary>
    /// Where nothing is cut between two parts no overlap covers a misfit: what people notice between fills. Common
    /// practice, no source.
    /// </summary>
    private const int Noticed = Units.Millimetre;

    /// <summary>At a cross on earlier work.</summary>
    internal static int Of(Plan plan, Part part, AlignmentStitch cross) =>
        JoinWith(plan, part, cross)?.Covers ?? OfPart(plan, part);

    /// <summary>Of all its joins with earlier parts that which covers least.</summary>
    internal static int OfPart(Plan plan, Part part)
    {
        var later = plan.Hoopings.IndexOf(part.Hooping);
        return plan.Joins.Where(j => j.Later == later).Select(j => j.Covers).DefaultIfEmpty(Noticed).Min();
    }

    /// <summary>Null where the two parts only lie beside each other.</summary>
    internal static PartJoin? JoinWith(Plan plan, Part part, AlignmentStitch cross)
    {
        var later = plan.Hoopings.IndexOf(part.Hooping);
        return plan.Joins.FirstOrDefault(j => j.Earlier == cross.With && j.Later == later);
    }
}
