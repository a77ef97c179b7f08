using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// The table of parts beside an overview, in sewing order, and what the signs mean. A plan that is not stitched yet has
/// no parts, and no figures of theirs.
/// </summary>
internal sealed class OverviewTable(Canvas canvas, int letters, Plan plan, ImmutableArray<ListedPart> parts)
{
    /// <summary>Right edges of the columns of numbers and left edges of the others, in heights of a letter.</summary>
    private const int PartAt = 0;

    private const int HoopAt = 4;
    private const int StitchesAt = 18;
    private const int TimeAt = 26;
    private const int SetByAt = 28;
    private const int RightAt = 38;

    private const int Signs = 4;

    private int Row => 2 * letters;

    internal int Width => RightAt * letters;

    internal int Height => ((plan.Hoopings.Length + 3) * Row) + (Signs * Row) + Row;

    internal void Draw(Point at)
    {
        var y = at.Y + letters;
        foreach (
            var (text, column, side) in (ReadOnlySpan<(string, int, Side)>)
                [
                    ("part", PartAt, Side.Left),
                    ("hoop lies", HoopAt, Side.Left),
                    (Sewn ? "stitches" : "", StitchesAt, Side.Right),
                    (Sewn ? "time" : "", TimeAt, Side.Right),
                    ("set by", SetByAt, Side.Left),
                ]
        )
            Cell(text, at.X, column, y, side, MarkInk.Frame);
        Rule(at.X, y + (letters / 2));
        foreach (var (hooping, i) in plan.Hoopings.Select((h, i) => (h, i)))
        {
            y += Row;
            Cell(hooping.Letter, at.X, PartAt, y, Side.Left, MarkInk.Field(i));
            Cell(TurnText.Short(hooping.Field.Turn), at.X, HoopAt, y, Side.Left, Colour.Ink);
            if (Sewn)
                Amounts(parts[i].Figures.Counts.Stitches, parts[i].Figures.Minutes, at.X, y);
            var set =
                !hooping.Takes.IsEmpty ? string.Join(" ", hooping.Takes.Select(c => plan.Corners[c].Id))
                : i == 0 && !plan.PlacementLines.IsEmpty ? "folds"
                : "";
            Cell(set, at.X, SetByAt, y, Side.Left, Colour.Ink);
        }
        Rule(at.X, y + (letters / 2));
        y += Row;
        if (Sewn)
        {
            Cell("all", at.X, PartAt, y, Side.Left, Colour.Ink);
            Amounts(parts.Sum(p => p.Figures.Counts.Stitches), parts.Sum(p => p.Figures.Minutes), at.X, y);
        }
        Key(new(at.X, y + (2 * Row)));
    }

    private void Key(Point at)
    {
        var (x, y, middle) = (at.X + (5 * letters), at.Y, letters / 2);
        Arrow.Draw(canvas, new(at.X + (2 * letters), y - middle), new(0, -1), letters * 3 / 2, MarkInk.Field(0));
        canvas.Text("the hoop's upper edge", new(x, y), letters, Colour.Ink);
        y += Row;
        canvas.Dashes(letters / 6, letters, Colour.Ink, new(at.X, y - middle), new(at.X + (4 * letters), y - middle));
        canvas.Text("seam: parts meet and overlap", new(x, y), letters, Colour.Ink);
        y += Row;
        canvas.Line(
            letters / 6,
            MarkInk.Corner,
            100,
            new(at.X + (3 * letters), y),
            new(at.X + letters, y),
            new(at.X + letters, y - letters)
        );
        canvas.Text("corner that later parts are set by", new(x, y), letters, Colour.Ink);
        y += Row;
        canvas.Text("Parts are sewn in the order of their letters.", new(at.X, y), letters, Colour.Ink);
    }

    private bool Sewn => !parts.IsEmpty;

    private void Amounts(int stitches, double minutes, int x, int y)
    {
        Cell(Figures.Count(stitches), x, StitchesAt, y, Side.Right, Colour.Ink);
        Cell(Figures.Minutes(minutes), x, TimeAt, y, Side.Right, Colour.Ink);
    }

    private void Cell(string text, int x, int column, int y, Side side, Colour colour) =>
        canvas.Text(text, new(x + (column * letters), y), letters, colour, side);

    private void Rule(int x, int y) => canvas.Line(letters / 10, MarkInk.Frame, 100, new(x, y), new(x + Width, y));
}
