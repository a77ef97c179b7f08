using Splitter.Parts;
using Splitter.Planning;
using Splitter.Planning.Seams;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// How far off a part may come out before it is set again, µm: what the overlap of its join covers, and where satin or
/// a line is cut no more than people notice there.
/// </summary>
internal static class AlignmentLimit
{
    /// <summary>At a cross on earlier work.</summary>
    internal static int Of(SheetContent sheet, Part part, AlignmentStitch cross) =>
        Joins(sheet.Plan, part).FirstOrDefault(j => j.Earlier == cross.With) is { } join
            ? Of(sheet, join)
            : OfPart(sheet, part);

    /// <summary>Of all its joins with earlier parts that which bears least.</summary>
    internal static int OfPart(SheetContent sheet, Part part) =>
        Joins(sheet.Plan, part).Select(join => Of(sheet, join)).DefaultIfEmpty(Noticed.InFills).Min();

    /// <summary>
    /// How far two corners may have come nearer or apart: half of it is what each of them is off when both are set. So
    /// what the overlap covers will do, as long as no half is more than a cross may be off.
    /// </summary>
    internal static int OfDistances(SheetContent sheet, Part part) =>
        Joins(sheet.Plan, part)
            .Select(join => Math.Min(join.Covers, 2 * Of(sheet, join)))
            .DefaultIfEmpty(Noticed.InFills)
            .Min();

    private static int Of(SheetContent sheet, PartJoin join) =>
        sheet.Ground.Seams.Any(s =>
            s.Ground == SeamGround.LineWork && (s.Seam.Earlier, s.Seam.Later) == (join.Earlier, join.Later)
        )
            ? Math.Min(join.Covers, Noticed.InLines)
            : join.Covers;

    /// <summary>With earlier parts; none where nothing is cut between it and another.</summary>
    private static IEnumerable<PartJoin> Joins(Plan plan, Part part)
    {
        var later = plan.Hoopings.IndexOf(part.Hooping);
        return plan.Joins.Where(j => j.Later == later);
    }
}
