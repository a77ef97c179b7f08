using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Texts;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// For each join a bar as long as its parts may miss each other, on a pale one as long as they overlap.
/// </summary>
internal sealed class OverviewChart(Canvas canvas, Phrasebook say, int letters, Plan plan) : IPanel
{
    /// <summary>Joins below each other; more stand in a second column.</summary>
    private const int MostRows = 14;

    /// <summary>Where bars begin and how long they are, and where figures end; in heights of a letter.</summary>
    private const int BarAt = 5,
        BarLength = 12,
        FigureAt = 23,
        ColumnWidth = 26;

    private static readonly Colour Covered = Colour.Of("#d5dde3");
    private static readonly Colour Sure = Colour.Of("#2b5d7d");

    private int Row => letters * 17 / 10;

    private int Columns => (plan.Joins.Length + MostRows - 1) / MostRows;

    private int Rows => (plan.Joins.Length + Columns - 1) / Math.Max(1, Columns);

    private int LegendLetters => letters * 9 / 10;

    private ImmutableArray<(Colour Colour, string Text)> Legend =>
        [
            (Sure, say.Say("overview.chart.sure")),
            (Covered, say.Say("overview.chart.covered")),
            (MarkInk.TooFar, say.Say("overview.chart.too-far")),
        ];

    public int Width => Math.Max(Legend.Sum(sign => WidthOf(sign.Text)), Columns * ColumnWidth * letters);

    public int Height => (4 * letters) + (Rows * Row);

    public void Draw(Point at)
    {
        canvas.Text(say.Say("overview.chart"), at with { Y = at.Y + letters }, letters, MarkInk.Frame);
        var legend = at.Y + (letters * 28 / 10);
        var x = at.X;
        foreach (var (colour, text) in Legend)
        {
            canvas.Area(new Box(x, legend - (letters * 8 / 10), x + letters, legend), colour);
            canvas.Text(text, new(x + (letters * 15 / 10), legend), LegendLetters, Colour.Ink);
            x += WidthOf(text);
        }
        var full = plan.Joins.Max(join => Math.Max(join.Within95, join.Covers));
        foreach (var (join, i) in plan.Joins.Select((join, i) => (join, i)))
            Bar(
                join,
                full,
                new(at.X + (i / Rows * ColumnWidth * letters), at.Y + (4 * letters) + (((i % Rows) + 1) * Row))
            );
    }

    /// <summary>A sign of the legend, and the gap to the next.</summary>
    private int WidthOf(string text) => StrokeFont.WidthOf(text, LegendLetters) + (3 * letters);

    private void Bar(PartJoin join, int full, Point line)
    {
        var (error, covered) = (join.Within95, join.Covers);
        canvas.Text(
            $"{plan.Hoopings[join.Earlier].Letter}-{plan.Hoopings[join.Later].Letter}",
            line,
            letters,
            Colour.Ink
        );
        Stretch(0, covered, letters, Covered);
        Stretch(0, Math.Min(error, covered), letters / 2, Sure);
        if (error > covered)
            Stretch(covered, error, letters / 2, MarkInk.TooFar);
        canvas.Text(
            $"{say.Numbers.Misfit(error)} {say.Numbers.Unit}",
            line with
            {
                X = line.X + (FigureAt * letters),
            },
            letters,
            error > covered ? MarkInk.TooFar : Colour.Ink,
            Side.Right
        );

        void Stretch(int from, int to, int height, Colour colour)
        {
            var middle = line.Y - (letters / 2);
            canvas.Area(new Box(Along(from), middle - (height / 2), Along(to), middle + (height / 2)), colour);
        }

        int Along(int error) => line.X + (BarAt * letters) + Units.Round(error / (double)full * BarLength * letters);
    }
}
