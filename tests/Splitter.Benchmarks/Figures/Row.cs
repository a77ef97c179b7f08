using System.Globalization;
using Splitter.Benchmarks.Least;
using Splitter.Planning;

namespace Splitter.Benchmarks.Figures;

/// <summary>One line of the table.</summary>
internal sealed record Row
{
    internal const string Header = """
        | artwork | size, mm | shapes | hoopings | bound | plain grid | seam cost | straight | ratio | least | plain grid, straight | cut | worst fit, mm | s | MB |
        | --- | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
        """;

    public required string Name { get; init; }
    public required string Size { get; init; }
    public required int Shapes { get; init; }
    public required int Hoopings { get; init; }
    public required int Bound { get; init; }

    /// <summary>Fields of the same hoop in rows and columns over the whole sheet, the better of both turns.</summary>
    public required int Grid { get; init; }
    public required double Cost { get; init; }
    public required double Straight { get; init; }

    /// <summary>No seams between the same fields cost less; null where that would take too long to find.</summary>
    public required double? Least { get; init; }

    /// <summary>Seam cost of straight seams between the fields of the grid.</summary>
    public required double GridStraight { get; init; }
    public required int Cut { get; init; }

    /// <summary>Null when nothing is cut.</summary>
    public required double? WorstFit { get; init; }
    public required double Seconds { get; init; }
    public required double Megabytes { get; init; }

    internal double? Ratio => Straight > 0 ? Cost / Straight : null;

    /// <summary>The least against straight seams.</summary>
    internal double? LeastRatio => Straight > 0 ? Least / Straight : null;

    /// <summary>The plan's seams against the least.</summary>
    internal double? RatioToLeast => Least > 0 ? Cost / Least : null;

    internal double? RatioToGrid => GridStraight > 0 ? Cost / GridStraight : null;

    internal static Row Of(string name, Outlook outlook, double seconds, double megabytes)
    {
        var (drawing, plan) = (outlook.Job.Drawing, outlook.Plans.Single());
        var grid = PlainGrid.Of(outlook.Job.Recipe, drawing, plan.Hoop);
        return new()
        {
            Name = name,
            Size = Text($"{drawing.Width / 1000.0:0} x {drawing.Height / 1000.0:0}"),
            Shapes = drawing.Shapes.Length,
            Hoopings = plan.Hoopings.Length,
            Bound = plan.LowerBound,
            Grid = grid.Columns * grid.Rows,
            Cost = plan.Seams.Cost,
            Straight = plan.Seams.StraightCost,
            Least = Held(LeastSeams.Cost(drawing, [.. plan.Hoopings.Select(h => h.Ground)]), plan.Seams),
            GridStraight = PlainGrid.Cost(outlook.Job.Recipe, drawing, plan.Hoop),
            Cut = plan.Seams.CutShapes,
            WorstFit = plan.Joins.IsEmpty ? null : plan.Joins.Max(j => j.PredictedError) / 1000,
            Seconds = seconds,
            Megabytes = megabytes,
        };
    }

    /// <summary>The bound, which the plan's seams and straight ones keep; else it is none.</summary>
    private static double? Held(double? least, SeamCost seams) =>
        least is null || least <= Math.Min(seams.Cost, seams.StraightCost)
            ? least
            : throw new InvalidOperationException($"A bound of {least} is wrong: seams cost {seams.Cost}.");

    internal string Line() =>
        Text(
            $"| {Name} | {Size} | {Shapes} | {Hoopings} | {Bound} | {Grid} | {Cost:0} | {Straight:0} | {Ratio:0.00} | {(LeastRatio is { } least ? Text($"{least:0.00}") : "-")} | {GridStraight:0} | {Cut} | {WorstFit:0.00} | {Seconds:0.0} | {Megabytes:0} |"
        );

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
