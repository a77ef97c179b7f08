using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Texts;

namespace Splitter.Outputs.Pictures;

/// <summary>The threads of a work, and how much of each it takes once it is stitched.</summary>
internal sealed class OverviewThreads(
    Canvas canvas,
    Phrasebook say,
    int letters,
    ImmutableArray<SewThread> threads,
    ImmutableArray<ListedPart> parts
) : IPanel
{
    private int Row => letters * 17 / 10;

    public int Width => 26 * letters;

    public int Height => (threads.Length + 1) * Row;

    public void Draw(Point at)
    {
        var y = at.Y + letters;
        canvas.Text(say.Say("overview.thread"), at with { Y = y }, letters, MarkInk.Frame);
        if (!parts.IsEmpty)
            canvas.Text(say.Say("overview.length"), new(at.X + Width, y), letters, MarkInk.Frame, Side.Right);
        canvas.Line(
            letters / 10,
            MarkInk.Frame,
            100,
            new(at.X, y + (letters / 2)),
            new(at.X + Width, y + (letters / 2))
        );
        var lengths = Lengths();
        foreach (var (i, thread) in threads.Index())
        {
            y += Row;
            var swatch = new Box(at.X, y - (letters * 5 / 4), at.X + (3 * letters), y + (letters / 4));
            canvas.Area(swatch, Colour.Of(thread.Color));
            canvas.Outline(swatch, letters / 20, MarkInk.Frame);
            canvas.Text(thread.Name, new(at.X + (4 * letters), y), letters, Colour.Ink);
            if (!parts.IsEmpty)
                canvas.Text(lengths[i], new(at.X + Width, y), letters, Colour.Ink, Side.Right);
        }
    }

    /// <summary>
    /// With what marks take, which has no row here: the very figures of the work sheet, which add up.
    /// </summary>
    private ImmutableArray<string> Lengths()
    {
        var used = parts.SelectMany(p => p.Figures.Threads).ToLookup(t => t.Thread, t => t.Metres);
        return say
            .Numbers.Threads([
                .. threads.Select(thread => used[thread.Name].Sum()),
                used[PartFigures.MarkingThread].Sum(),
            ])
            .Rows;
    }
}
