using static System.FormattableString;

namespace Splitter.Tool.Commands.Plans;

/// <summary>A plan's facts as tables for a person.</summary>
internal static class PlanText
{
    internal static string Of(PlanDocument document)
    {
        var scale = ErrorBar.Scale(document.Hoops.SelectMany(hoop => hoop.Joins));
        var tables = document.Hoops.Select(hoop => OfHoop(hoop, scale)).Prepend(HoopComparison.Of(document.Hoops));
        var joined = document.Hoops.Any(hoop => hoop.Joins.Count > 0);
        return string.Join("\n", joined ? tables.Append(ErrorBar.Explained(document.IsClothStiff)) : tables);
    }

    private static string OfHoop(HoopPlan hoop, ErrorBar scale)
    {
        var heading = Invariant($"hoop {hoop.Hoop}, field {hoop.WidthMm} x {hoop.HeightMm} mm");
        var text = $"{heading}\n\n{Parts(hoop)}{CornerTable.Of(hoop.Parts)}";
        return hoop.Joins.Count == 0
            ? $"{text}\nno seam cuts anything: parts do not join\n"
            : $"{text}\n{Joins(hoop, scale)}";
    }

    private static TextTable Parts(HoopPlan hoop)
    {
        // Cloth in the machine's throat, where the recipe says where that is.
        var throats = hoop.Parts.Any(part => part.InThroatMm is not null);
        var table = new TextTable([
            "part",
            "centre x",
            "centre y",
            "turn",
            .. IfKnown("in throat, mm"),
            "set by",
            "corners",
            "stops",
            "stitches, about",
            "minutes, about",
        ]);
        foreach (var part in hoop.Parts)
            table.Add([
                part.Letter,
                Invariant($"{part.CenterMm[0]:0.0}"),
                Invariant($"{part.CenterMm[1]:0.0}"),
                Invariant($"{part.TurnDeg}"),
                .. IfKnown(Invariant($"{part.InThroatMm:0}")),
                part.SetBy.Count == 0 ? "-" : string.Join(" ", part.SetBy),
                part.Corners.Count == 0 ? "-" : string.Join(" ", part.Corners),
                Invariant($"{part.Stops}"),
                Rough.Stitches(part.EstimatedStitches),
                Invariant($"{part.EstimatedMinutes:0}"),
            ]);
        return table;

        IEnumerable<string> IfKnown(string cell) => throats ? [cell] : [];
    }

    private static string Joins(HoopPlan hoop, ErrorBar scale)
    {
        var table = new TextTable(
            "join",
            "set",
            "grid",
            "warp",
            "weft",
            "bias",
            "all",
            "95 %",
            "covers",
            scale.Heading,
            "overlap",
            "worst at x",
            "y"
        );
        // Without any star the column needs no room for one.
        var none = hoop.Joins.Any(join => join.IsWorstAtJunction) ? " " : "";
        foreach (var join in hoop.Joins)
        {
            var at = join.IsWorstAtJunction ? join.Junction!.AtMm : join.WorstAtMm;
            table.Add(
                string.Join("-", join.Between),
                Invariant($"{join.Budget.SettingMm:0.00}"),
                Invariant($"{join.Budget.RoundingMm:0.00}"),
                Invariant($"{join.Budget.WarpMm:0.00}"),
                Invariant($"{join.Budget.WeftMm:0.00}"),
                Invariant($"{join.Budget.BiasMm:0.00}"),
                Invariant($"{join.RmsErrorMm:0.00}"),
                Invariant($"{join.ErrorMm:0.00}{(join.IsWorstAtJunction ? ErrorBar.Junction : none)}"),
                Invariant($"{join.CoversMm:0.00}"),
                scale.Of(join),
                Invariant($"{join.OverlapMm:0.00}"),
                Invariant($"{at[0]:0.0}"),
                Invariant($"{at[1]:0.0}")
            );
        }
        return table.ToString();
    }
}
