using System.Collections.Immutable;
using static System.FormattableString;

namespace Splitter.Tool.Commands.Plans;

/// <summary>What the corners of each part give, and why there are not more of them, or not better ones.</summary>
internal static class CornerTable
{
    /// <summary>Less than this a corner hardly gives: the plan sews one only where the recipe asks for it.</summary>
    private const double Hardly = 5;

    private const string Explanation =
        "apart = the two corners of a part that lie farthest from each other, off line = how far another lies "
        + "from the line\n"
        + "through them, both in mm; last gives = how much less the last corner makes the worst error of the "
        + "part's seams, in %.\n";

    /// <summary>The table with its explanation; nothing where no part is set by corners.</summary>
    internal static string Of(IReadOnlyList<PlannedPart> parts)
    {
        ImmutableArray<PlannedPart> set = [.. parts.Where(part => part.CornersApartMm is not null)];
        if (set.IsEmpty)
            return "";
        var table = new TextTable("part", "apart", "off line", "last gives", "");
        foreach (var part in set)
            table.Add(
                part.Letter,
                Invariant($"{part.CornersApartMm:0.0}"),
                part.Corners.Count > 2 ? Invariant($"{part.CornersOffLineMm:0.0}") : "",
                Invariant($"{part.LastCornerGivesPercent:0}"),
                Remark(part)
            );
        return $"\n{table}{Explanation}";
    }

    private static string Remark(PlannedPart part) =>
        (part.Corners.Count, part.LastCornerGivesPercent, part.OneMoreCornerGivesPercent) switch
        {
            (2, _, { } more) => Invariant(
                $"two will do: a third would give {Math.Max(0, more):0} %{Strip(part, ", and")}"
            ),
            (2, _, _) => $"two{Strip(part, ":")}",
            (_, < Hardly, _) => $"as many as the recipe asks for{Strip(part, ";")}",
            _ => Strip(part, "").TrimStart(),
        };

    private static string Strip(PlannedPart part, string and) =>
        part.CornersOnStrip == true
            ? $"{and} the ground they share is a strip with room for a line of corners only"
            : "";
}
