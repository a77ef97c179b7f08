using static System.FormattableString;

namespace Splitter.Tool.Commands.Plans;

/// <summary>Hoops side by side: what another hoop would cost or save.</summary>
internal static class HoopComparison
{
    /// <summary>What is known of fewer hoopings; fixed fields are not called into question.</summary>
    private static string Bound(HoopTotals totals) =>
        totals.Proven is not { } proven
            ? "placed by hand"
            : (proven ? "proven" : Invariant($"at least {totals.LowerBound}"))
                + (totals.Fixed > 0 ? ", with what is fixed" : "");

    internal static string Of(IReadOnlyList<HoopPlan> hoops)
    {
        var table = new TextTable(["hoop", .. hoops.Select(hoop => hoop.Hoop)]);
        Row("field", hoop => Invariant($"{hoop.WidthMm} x {hoop.HeightMm} mm"));
        Row("hoopings", hoop => Invariant($"{hoop.Totals.Parts} ({Bound(hoop.Totals)})"));
        Row("of them turned", hoop => Invariant($"{hoop.Totals.Turned}"));
        Row("shapes cut", hoop => Invariant($"{hoop.Totals.CutShapes}"));
        Row("seams show", hoop => Invariant($"{hoop.Totals.SeamCost:0.0}"));
        Row("straight seams would", hoop => Invariant($"{hoop.Totals.StraightSeamCost:0.0}"));
        Row(
            "worst error, 95 %",
            hoop =>
                hoop.Totals is { WorstErrorMm: { } error, WorstBetween: { } between }
                    ? Invariant($"{error:0.00} mm ({string.Join("-", between)})")
                    : "0 (no joins)"
        );
        Row("joins not covered", hoop => Invariant($"{hoop.Totals.JoinsNotCovered} of {hoop.Joins.Count}"));
        Row("stops", hoop => Invariant($"{hoop.Totals.Stops}"));
        Row("stitches, about", hoop => Rough.Stitches(hoop.Totals.EstimatedStitches));
        Row("time, about", hoop => Rough.Time(hoop.Totals.EstimatedMinutes));
        Row("with hooping", hoop => Rough.Time(hoop.Totals.EstimatedMinutes + hoop.Totals.HoopingMinutes));
        return table.ToString();

        void Row(string fact, Func<HoopPlan, string> of) => table.Add([fact, .. hoops.Select(of)]);
    }
}
