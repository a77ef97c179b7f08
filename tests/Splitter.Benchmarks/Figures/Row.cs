using System.Globalization;

namespace Splitter.Benchmarks.Figures;

/// <summary>One line of the table.</summary>
internal sealed record Row
{
    internal const string Header = """
        | artwork | size, mm | shapes | hoopings | bound | plain grid | seam cost | straight | ratio | plain grid, straight | cut | worst fit, mm | s | MB |
        | --- | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
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

    /// <summary>Seam cost of straight seams between the fields of the grid.</summary>
    public required double GridStraight { get; init; }
    public required int Cut { get; init; }

    /// <summary>Null when nothing is cut.</summary>
    public required double? WorstFit { get; init; }
    public required double Seconds { get; init; }
    public required double Megabytes { get; init; }

    internal double? Ratio => Straight > 0 ? Cost / Straight : null;

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
            GridStraight = PlainGrid.Cost(outlook.Job.Recipe, drawing, plan.Hoop),
            Cut = plan.Seams.CutShapes,
            WorstFit = plan.Joins.IsEmpty ? null : plan.Joins.Max(j => j.PredictedError) / 1000,
            Seconds = seconds,
            Megabytes = megabytes,
        };
    }

    internal string Line() =>
        Text(
            $"| {Name} | {Size} | {Shapes} | {Hoopings} | {Bound} | {Grid} | {Cost:0} | {Straight:0} | {Ratio:0.00} | {GridStraight:0} | {Cut} | {WorstFit:0.00} | {Seconds:0.0} | {Megabytes:0} |"
        );

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
