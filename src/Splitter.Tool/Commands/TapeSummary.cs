using Splitter.Checking;
using static System.FormattableString;

namespace Splitter.Tool.Commands;

/// <summary>What a tape holds, in figures. Millimetres from where it starts, u right and v up.</summary>
internal sealed record TapeSummary(
    string File,
    string Label,
    int Stitches,
    int Jumps,
    int Trims,
    int Stops,
    double LongestStitchMm,
    IReadOnlyList<double> BoundsMm,
    IReadOnlyList<int> StepStitches
)
{
    internal static TapeSummary Of(TapeReport report) =>
        new(
            report.File,
            report.Label,
            report.Stitches,
            report.Jumps,
            report.Trims,
            report.Stops,
            report.LongestStitchMm,
            [report.LeftMm, report.BottomMm, report.RightMm, report.TopMm],
            report.Steps
        );

    internal string ToText()
    {
        var table = new TextTable("what", "value");
        table.Add("label", Label.Length > 0 ? Label : "none");
        table.Add("stitches", Invariant($"{Stitches}"));
        table.Add("jumps", Invariant($"{Jumps}"));
        table.Add("trims", Invariant($"{Trims} (runs of at least three jumps)"));
        table.Add("stops", Invariant($"{Stops}"));
        table.Add("longest stitch", Invariant($"{LongestStitchMm:0.0} mm"));
        table.Add("left, right", Invariant($"{BoundsMm[0]:0.0} mm, {BoundsMm[2]:0.0} mm"));
        table.Add("bottom, top", Invariant($"{BoundsMm[1]:0.0} mm, {BoundsMm[3]:0.0} mm"));
        table.Add("size", Invariant($"{BoundsMm[2] - BoundsMm[0]:0.0} x {BoundsMm[3] - BoundsMm[1]:0.0} mm"));
        for (var i = 0; i < StepStitches.Count; i++)
            table.Add(Invariant($"step {i + 1}"), Invariant($"{StepStitches[i]} stitches"));
        return $"{File}\n\n{table}";
    }
}
