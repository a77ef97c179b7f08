using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Texts;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// The table of parts beside an overview, in sewing order; a plan that is not stitched yet has no parts, and no
/// figures of theirs.
/// </summary>
internal sealed class OverviewTable(
    Canvas canvas,
    Phrasebook say,
    int letters,
    Plan plan,
    ImmutableArray<ListedPart> parts
) : IPanel
{
    /// <summary>Right edges of the columns of numbers and left edges of the others, in heights of a letter.</summary>
    private const int PartAt = 0;

    private const int HoopAt = 4;
    private const int SetByAt = 15;
    private const int StitchesAt = 38;
    private const int TimeAt = 47;

    private int Row => letters * 17 / 10;

    public int Width => (Sewn ? TimeAt : SetByAt + 16) * letters;

    public int Height => (plan.Hoopings.Length + (Sewn ? 2 : 1)) * Row;

    public void Draw(Point at)
    {
        var y = at.Y + letters;
        // The very figures of the work sheet, which add up.
        var times = Numbers.Times(parts.Select(p => p.Figures.Minutes));
        foreach (
            var (text, column, side) in (ReadOnlySpan<(string, int, Side)>)
                [
                    (say.Say("overview.part"), PartAt, Side.Left),
                    (say.Say("overview.lies"), HoopAt, Side.Left),
                    (Sewn ? say.Say("overview.stitches") : "", StitchesAt, Side.Right),
                    (Sewn ? say.Say("overview.time") : "", TimeAt, Side.Right),
                    (say.Say("overview.set-by"), SetByAt, Side.Left),
                ]
        )
            Cell(text, at.X, column, y, side, MarkInk.Frame);
        Rule(at.X, y + (letters / 2));
        foreach (var (hooping, i) in plan.Hoopings.Select((h, i) => (h, i)))
        {
            y += Row;
            Cell(hooping.Letter, at.X, PartAt, y, Side.Left, MarkInk.Field(i));
            Cell(TurnText.Short(say, hooping.Field.Turn), at.X, HoopAt, y, Side.Left, Colour.Ink);
            if (Sewn)
                Amounts(parts[i].Figures.Counts.Stitches, times.Rows[i], at.X, y);
            var set =
                !hooping.Takes.IsEmpty ? string.Join(" ", hooping.Takes.Select(c => plan.Corners[c].Id))
                : i == 0 && !plan.PlacementLines.IsEmpty ? say.Say("overview.folds")
                : "";
            Cell(set, at.X, SetByAt, y, Side.Left, Colour.Ink);
        }
        Rule(at.X, y + (letters / 2));
        y += Row;
        if (Sewn)
        {
            Cell(say.Say("overview.all"), at.X, PartAt, y, Side.Left, Colour.Ink);
            Amounts(parts.Sum(p => p.Figures.Counts.Stitches), times.All, at.X, y);
        }
    }

    private bool Sewn => !parts.IsEmpty;

    private void Amounts(int stitches, string time, int x, int y)
    {
        Cell(Numbers.Count(stitches), x, StitchesAt, y, Side.Right, Colour.Ink);
        Cell(time, x, TimeAt, y, Side.Right, Colour.Ink);
    }

    private void Cell(string text, int x, int column, int y, Side side, Colour colour) =>
        canvas.Text(text, new(x + (column * letters), y), letters, colour, side);

    private void Rule(int x, int y) => canvas.Line(letters / 10, MarkInk.Frame, 100, new(x, y), new(x + Width, y));
}
