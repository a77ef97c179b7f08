using Splitter.Checking.Inspecting;
using Splitter.Geometry;
using static System.FormattableString;

namespace Splitter.Tool.Commands;

/// <summary>Layers of thread on a square millimetre.</summary>
/// <param name="Percentile99">What 99 of 100 square millimetres with thread do not exceed.</param>
/// <param name="MostAtMm">The middle of the fullest.</param>
internal sealed record TapeLayers(double Most, double Percentile99, IReadOnlyList<double> MostAtMm);

/// <summary>What a tape holds, in figures. Millimetres from where it starts, u right and v up.</summary>
internal sealed record TapeSummary(
    string File,
    string Label,
    int Stitches,
    int Jumps,
    int Trims,
    int Stops,
    double ThreadM,
    double LongestStitchMm,
    IReadOnlyList<double> BoundsMm,
    TapeLayers Layers,
    int MostPenetrationsPerMm2,
    IReadOnlyList<int> StepStitches
)
{
    internal static TapeSummary Of(TapeReport report)
    {
        var (counts, bounds, fullest) = (report.Counts, report.Counts.Bounds, report.Fullest.Middle);
        return new(
            report.File,
            report.Label,
            counts.Stitches,
            counts.Jumps,
            counts.Trims,
            counts.Stops,
            Rounded(Units.ToMillimetres(report.Trace.Length) / 1000),
            Rounded(counts.Longest / 10),
            [bounds.Left / 10.0, bounds.Bottom / 10.0, bounds.Right / 10.0, bounds.Top / 10.0],
            new(
                Rounded(report.LayersMost),
                Rounded(report.Layers99),
                [Units.ToMillimetres(fullest.X), Units.ToMillimetres(-fullest.Y)]
            ),
            report.HolesMost,
            counts.Steps
        );
    }

    internal string ToText()
    {
        var table = new TextTable("what", "value");
        table.Add("label", Label.Length > 0 ? Label : "none");
        table.Add("stitches", Invariant($"{Stitches}"));
        table.Add("jumps", Invariant($"{Jumps}"));
        table.Add("trims", Invariant($"{Trims} (runs of at least three jumps)"));
        table.Add("stops", Invariant($"{Stops}"));
        table.Add("thread on the cloth", Invariant($"{ThreadM:0.00} m"));
        table.Add("longest stitch", Invariant($"{LongestStitchMm:0.0} mm"));
        table.Add("left, right", Invariant($"{BoundsMm[0]:0.0} mm, {BoundsMm[2]:0.0} mm"));
        table.Add("bottom, top", Invariant($"{BoundsMm[1]:0.0} mm, {BoundsMm[3]:0.0} mm"));
        table.Add("size", Invariant($"{BoundsMm[2] - BoundsMm[0]:0.0} x {BoundsMm[3] - BoundsMm[1]:0.0} mm"));
        table.Add(
            "layers on a mm², most",
            Invariant($"{Layers.Most:0.0}, at {Layers.MostAtMm[0]:0.0} mm, {Layers.MostAtMm[1]:0.0} mm")
        );
        table.Add("layers, 99 % of mm²", Invariant($"{Layers.Percentile99:0.0} or less"));
        table.Add("penetrations of a mm²", Invariant($"{MostPenetrationsPerMm2} or less"));
        for (var i = 0; i < StepStitches.Count; i++)
            table.Add(Invariant($"step {i + 1}"), Invariant($"{StepStitches[i]} stitches"));
        return $"{File}\n\n{table}";
    }

    private static double Rounded(double value) => Math.Round(value, 2, MidpointRounding.AwayFromZero);
}
