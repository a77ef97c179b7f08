using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using static System.FormattableString;

namespace Splitter.Tool.Commands;

/// <summary>A plan in figures, lengths in millimetres.</summary>
internal sealed record PlanSummary(
    string Hoop,
    double WidthMm,
    double HeightMm,
    int LowerBound,
    double SeamCost,
    double StraightSeamCost,
    int CutShapes,
    IReadOnlyList<FieldSummary> Fields,
    IReadOnlyList<JoinSummary> Joins
)
{
    internal static PlanSummary Of(Plan plan) =>
        new(
            plan.Hoop.Name,
            Mm(plan.Hoop.Width),
            Mm(plan.Hoop.Height),
            plan.LowerBound,
            Math.Round(plan.Seams.Cost, 1),
            Math.Round(plan.Seams.StraightCost, 1),
            plan.Seams.CutShapes,
            [.. plan.Hoopings.Select(hooping => FieldSummary.Of(plan, hooping))],
            [.. plan.Joins.Select(join => JoinSummary.Of(plan, join))]
        );

    internal static double Mm(double micrometres) => Math.Round(micrometres / Units.Millimetre, 2);

    internal string ToText()
    {
        var proof =
            LowerBound == Fields.Count ? "no plan has fewer" : Invariant($"no plan has fewer than {LowerBound}");
        var text = Invariant(
            $"hoop {Hoop}, field {WidthMm} x {HeightMm} mm: {Fields.Count} parts ({proof}), {CutShapes} shapes cut, seams show {SeamCost} (straight ones {StraightSeamCost})\n\n"
        );
        var fields = new TextTable("part", "centre x", "centre y", "turn", "takes corners from", "corners taken");
        foreach (var f in Fields)
            fields.Add(
                f.Letter,
                Invariant($"{f.CentreXMm:0.0}"),
                Invariant($"{f.CentreYMm:0.0}"),
                Invariant($"{f.TurnDeg}"),
                f.TakesFrom.Count == 0 ? "-" : string.Join(" ", f.TakesFrom),
                f.Takes.Count == 0 ? "-" : string.Join(" ", f.Takes)
            );
        text += fields;
        if (Joins.Count == 0)
            return text;
        var joins = new TextTable("join", "predicted error", "overlap", "worst at x", "y");
        foreach (var j in Joins)
            joins.Add(
                $"{j.Earlier}-{j.Later}",
                Invariant($"{j.PredictedErrorMm:0.00} mm"),
                Invariant($"{j.OverlapMm:0.00} mm"),
                Invariant($"{j.WorstXMm:0.0}"),
                Invariant($"{j.WorstYMm:0.0}")
            );
        return $"{text}\n{joins}";
    }
}

/// <summary>One field of a plan.</summary>
internal sealed record FieldSummary(
    string Letter,
    double CentreXMm,
    double CentreYMm,
    int TurnDeg,
    IReadOnlyList<string> TakesFrom,
    IReadOnlyList<string> Takes
)
{
    internal static FieldSummary Of(Plan plan, Hooping hooping)
    {
        ImmutableArray<Corner> taken = [.. hooping.Takes.Select(i => plan.Corners[i])];
        return new(
            hooping.Letter,
            PlanSummary.Mm(hooping.Field.Centre.X),
            PlanSummary.Mm(hooping.Field.Centre.Y),
            (int)hooping.Field.Turn,
            [.. taken.Select(corner => corner.Donor).Distinct().Order().Select(i => plan.Hoopings[i].Letter)],
            [.. taken.Select(corner => corner.Id)]
        );
    }
}

/// <summary>One join of a plan.</summary>
internal sealed record JoinSummary(
    string Earlier,
    string Later,
    double PredictedErrorMm,
    double OverlapMm,
    double WorstXMm,
    double WorstYMm
)
{
    internal static JoinSummary Of(Plan plan, PartJoin join) =>
        new(
            plan.Hoopings[join.Earlier].Letter,
            plan.Hoopings[join.Later].Letter,
            PlanSummary.Mm(join.PredictedError),
            PlanSummary.Mm(join.Overlap),
            PlanSummary.Mm(join.WorstAt.X),
            PlanSummary.Mm(join.WorstAt.Y)
        );
}
