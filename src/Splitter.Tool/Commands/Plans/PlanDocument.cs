using System.Text.Json.Serialization;
using Splitter.Geometry;
using Splitter.Outputs;
using Splitter.Planning;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Tool.Commands.Plans;

/// <summary>
/// What <c>plan</c> tells: the same facts as table and as JSON, whose keys stand in the order of these records. README
/// describes it. Lengths are millimetres, places are on the drawing.
/// </summary>
/// <param name="Plan">Version of this description.</param>
/// <param name="IsClothStiff">The recipe does not say that the cloth gives.</param>
internal sealed record PlanDocument(
    int Plan,
    string Recipe,
    string Title,
    double WidthMm,
    double HeightMm,
    IReadOnlyList<HoopPlan> Hoops,
    [property: JsonIgnore] bool IsClothStiff
)
{
    internal static PlanDocument Of(string recipe, Outlook outlook) =>
        new(
            1,
            recipe.Replace('\\', '/'),
            outlook.Job.Recipe.Title,
            Mm(outlook.Job.Drawing.Width),
            Mm(outlook.Job.Drawing.Height),
            [.. outlook.Plans.Select(plan => HoopPlan.Of(outlook.Job, plan))],
            outlook.Job.Recipe.Cloth.Stretch.IsNone
        );

    /// <summary>To three decimals; adding nothing makes minus nothing nothing.</summary>
    internal static double Mm(double micrometres) => Math.Round(micrometres / Units.Millimetre, 3) + 0.0;

    internal static double[] At(Point point) => [Mm(point.X), Mm(point.Y)];
}

/// <summary>A hoop and its plan.</summary>
internal sealed record HoopPlan(
    string Hoop,
    double WidthMm,
    double HeightMm,
    HoopTotals Totals,
    SeamLengths SeamMm,
    IReadOnlyList<PlannedPart> Parts,
    IReadOnlyList<PlannedCorner> Corners,
    IReadOnlyList<PlannedJoin> Joins
)
{
    internal static HoopPlan Of(Job job, Plan plan)
    {
        var estimates = Outputs.HoopingEstimate.Of(job.Recipe, job.Drawing, plan);
        PlannedPart[] parts = [.. plan.Hoopings.Select((h, i) => PlannedPart.Of(plan, h, estimates[i]))];
        PlannedJoin[] joins = [.. plan.Joins.Select(join => PlannedJoin.Of(plan, join))];
        return new(
            plan.Hoop.Name,
            PlanDocument.Mm(plan.Hoop.Width),
            PlanDocument.Mm(plan.Hoop.Height),
            HoopTotals.Of(job.Recipe, plan, parts, joins),
            SeamLengths.Of(SeamStretches.Of(job.Drawing, plan)),
            parts,
            [.. plan.Corners.Select(corner => PlannedCorner.Of(plan, corner))],
            joins
        );
    }
}

/// <summary>What hoops are compared by.</summary>
/// <param name="LowerBound">No plan with the same fixed fields has fewer parts.</param>
/// <param name="Proven">
/// There are no more parts than that; null where fields are placed by hand, and nothing is claimed.
/// </param>
/// <param name="Fixed">How many of them the recipe fixes.</param>
/// <param name="Turned">Parts whose hoop does not lie upright.</param>
/// <param name="WorstErrorMm">
/// The largest misfit of any join, along its seam or where others meet it, that is not exceeded 19 times in 20; null
/// without joins.
/// </param>
/// <param name="JoinsNotCovered">Joins whose sides do not lie over each other that far.</param>
internal sealed record HoopTotals(
    int Parts,
    int LowerBound,
    bool? Proven,
    int Fixed,
    int Turned,
    int CutShapes,
    double SeamCost,
    double StraightSeamCost,
    [property: JsonPropertyName("worst_error_95_mm")] double? WorstErrorMm,
    IReadOnlyList<string>? WorstBetween,
    int JoinsNotCovered,
    int Stops,
    int EstimatedStitches,
    double EstimatedMinutes,
    double HoopingMinutes
)
{
    internal static HoopTotals Of(Recipe recipe, Plan plan, PlannedPart[] parts, PlannedJoin[] joins)
    {
        var worst = joins.OrderByDescending(join => join.ErrorMm).FirstOrDefault();
        return new(
            parts.Length,
            plan.LowerBound,
            plan.IsProven,
            plan.Hoopings.Count(h => recipe.Fields.Fixed.Contains(new(h.Field.Centre, h.Field.Turn))),
            parts.Count(part => part.TurnDeg != 0),
            plan.Seams.CutShapes,
            Math.Round(plan.Seams.Cost, 1),
            Math.Round(plan.Seams.StraightCost, 1),
            worst?.ErrorMm,
            worst?.Between,
            joins.Count(join => !join.Covered),
            parts.Sum(part => part.Stops),
            parts.Sum(part => part.EstimatedStitches),
            Math.Round(parts.Sum(part => part.EstimatedMinutes), 1),
            Math.Round(Rates.HoopingMinutes(recipe.Machine, parts.Length), 1)
        );
    }
}

/// <summary>How long seams are over what they cross.</summary>
internal sealed record SeamLengths(double Nothing, double Fill, double LineWork)
{
    internal static SeamLengths Of(IReadOnlyCollection<SeamStretch> stretches)
    {
        double Over(SeamGround ground) =>
            PlanDocument.Mm(stretches.Where(s => s.Ground == ground).Sum(s => s.Line.Length));
        return new(
            Math.Round(Over(SeamGround.Bare) + Over(SeamGround.Whole), 3),
            Over(SeamGround.Fill),
            Over(SeamGround.LineWork)
        );
    }
}
