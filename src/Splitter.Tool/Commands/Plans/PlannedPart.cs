using System.Text.Json.Serialization;
using Splitter.Outputs;
using Splitter.Planning;

namespace Splitter.Tool.Commands.Plans;

/// <summary>One part of a plan. Stitches and minutes are estimates: nothing is stitched yet.</summary>
/// <param name="InThroatMm">Cloth in the machine's throat; null where nothing is known of it.</param>
/// <param name="SetBy">Letters of the parts whose corners it takes.</param>
/// <param name="CornersApartMm">
/// How far two of them are apart at most; null for the first part, as what follows.
/// </param>
/// <param name="CornersOffLineMm">How far another lies from the line through those two at most; 0 for two.</param>
/// <param name="LastCornerGivesPercent">
/// How much less the last of them makes the worst error of the part's seams; null for two.
/// </param>
/// <param name="OneMoreCornerGivesPercent">
/// The same for one more, too little to sew it; null where none was tried or has room.
/// </param>
/// <param name="CornersOnStrip">The shared ground is too narrow for a corner off that line.</param>
internal sealed record PlannedPart(
    string Letter,
    double[] CenterMm,
    int TurnDeg,
    double? InThroatMm,
    IReadOnlyList<string> SetBy,
    IReadOnlyList<string> Corners,
    double? CornersApartMm,
    double? CornersOffLineMm,
    double? LastCornerGivesPercent,
    double? OneMoreCornerGivesPercent,
    bool? CornersOnStrip,
    int Stops,
    int EstimatedStitches,
    double EstimatedMinutes
)
{
    internal static PlannedPart Of(Plan plan, Hooping hooping, HoopingEstimate estimate)
    {
        var taken = hooping.Takes.Select(i => plan.Corners[i]).ToList();
        return new(
            hooping.Letter,
            PlanDocument.At(hooping.Field.Centre),
            (int)hooping.Field.Turn,
            hooping.InThroat is { } cloth ? PlanDocument.Mm(cloth) : null,
            [.. taken.Select(corner => corner.Donor).Distinct().Order().Select(i => plan.Hoopings[i].Letter)],
            [.. taken.Select(corner => corner.Id)],
            hooping.Setting is { } set ? PlanDocument.Mm(set.Apart) : null,
            hooping.Setting is { } off ? PlanDocument.Mm(off.OffLine) : null,
            Percent(hooping.Setting?.LastGives),
            Percent(hooping.Setting?.OneMoreGives),
            hooping.Setting?.IsOnStrip,
            estimate.Stops,
            estimate.Stitches,
            Math.Round(estimate.Minutes, 1)
        );
    }

    private static double? Percent(double? share) => share is { } of ? Math.Round(100 * of, 1) + 0.0 : null;
}

/// <summary>One registration corner of a plan.</summary>
internal sealed record PlannedCorner(string Id, double XMm, double YMm, string SewnBy, IReadOnlyList<string> Sets)
{
    internal static PlannedCorner Of(Plan plan, Corner corner) =>
        new(
            corner.Id,
            PlanDocument.Mm(corner.At.X),
            PlanDocument.Mm(corner.At.Y),
            plan.Hoopings[corner.Donor].Letter,
            [.. corner.Receivers.Order().Select(i => plan.Hoopings[i].Letter)]
        );
}

/// <summary>One join of a plan.</summary>
/// <param name="WorstAtMm">Where the root mean square misfit is largest.</param>
/// <param name="RmsErrorMm">Root mean square misfit there, as the manifest's <c>predicted_error_mm</c>.</param>
/// <param name="ErrorMm">The misfit that is not exceeded 19 times in 20: the larger of the next two.</param>
/// <param name="AtJunctionsMm">Where others meet the two parts; null where none do.</param>
/// <param name="OverlapMm">How far each side runs past the seam.</param>
/// <param name="CoversMm">How far both sides lie over each other.</param>
/// <param name="Covered">The misfit stays below that, 19 times in 20.</param>
internal sealed record PlannedJoin(
    IReadOnlyList<string> Between,
    double[] WorstAtMm,
    [property: JsonPropertyName("predicted_error_mm")] double RmsErrorMm,
    ErrorParts Budget,
    [property: JsonPropertyName("error_95_mm")] double ErrorMm,
    double AlongSeamMm,
    double? AtJunctionsMm,
    PlannedJunction? Junction,
    double OverlapMm,
    double CoversMm,
    bool Covered
)
{
    [JsonIgnore]
    internal bool IsWorstAtJunction => AtJunctionsMm > AlongSeamMm;

    internal static PlannedJoin Of(Plan plan, PartJoin join) =>
        new(
            [plan.Hoopings[join.Earlier].Letter, plan.Hoopings[join.Later].Letter],
            PlanDocument.At(join.WorstAt),
            PlanDocument.Mm(join.PredictedError),
            ErrorParts.Of(join.Budget),
            PlanDocument.Mm(join.Within95),
            PlanDocument.Mm(join.AlongSeam),
            join.Junction is { } junction ? PlanDocument.Mm(junction.Misfit) : null,
            PlannedJunction.Of(plan, join.Junction),
            PlanDocument.Mm(join.Overlap),
            PlanDocument.Mm(join.Covers),
            join.IsCovered
        );
}

/// <summary>Where others meet two parts, and that asks most of their overlap.</summary>
internal sealed record PlannedJunction(IReadOnlyList<string> Parts, double[] AtMm)
{
    internal static PlannedJunction? Of(Plan plan, Junction? junction) =>
        junction is null
            ? null
            : new([.. junction.Parts.Select(i => plan.Hoopings[i].Letter)], PlanDocument.At(junction.At));
}

/// <summary>What an error consists of: root mean squares, whose squares add up.</summary>
internal sealed record ErrorParts(double SettingMm, double RoundingMm, double WarpMm, double WeftMm, double BiasMm)
{
    internal static ErrorParts Of(ErrorBudget budget) =>
        new(
            PlanDocument.Mm(budget.Setting),
            PlanDocument.Mm(budget.Rounding),
            PlanDocument.Mm(budget.Warp),
            PlanDocument.Mm(budget.Weft),
            PlanDocument.Mm(budget.Bias)
        );
}
