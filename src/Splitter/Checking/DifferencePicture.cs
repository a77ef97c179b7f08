using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Checking;

/// <summary>
/// A part as it was, as it is, and both over each other, side by side in true scale as they lie on the drawing.
/// </summary>
internal static class DifferencePicture
{
    private const int Margin = 8 * Units.Millimetre;
    private const int Heading = 12 * Units.Millimetre;
    private const int Letters = 3000;
    private const int KeyHeight = 14 * Units.Millimetre;

    /// <summary>Room for a heading above a narrow part.</summary>
    private const int NarrowestPanel = 60 * Units.Millimetre;

    /// <summary>Of a line that shows a stitch: thinner than thread, so that neighbours are told apart.</summary>
    private const int Thin = 200;

    /// <summary>Of stitches that only one side has, so that a single one is seen.</summary>
    private const int Thick = 350;

    /// <summary>Percent: of what is new, so that what was there before shows through.</summary>
    private const int Sheer = 60;

    // Blue and orange are told apart also by those who see red and green alike.
    private static readonly Colour Same = Colour.Of("#b5b0a6");
    private static readonly Colour Old = Colour.Of("#d4700f");
    private static readonly Colour New = Colour.Of("#1b5fa8");

    private readonly record struct Stitch(Point From, Point To);

    /// <summary>Null where nothing is sewn, or a tape cannot be read.</summary>
    internal static Picture? Of(string letter, SetSide old, SetSide now)
    {
        var to = now.FieldOf(letter);
        var read =
            from before in old.Runs(letter, old.FieldOf(letter, to))
            from after in now.Runs(letter, to)
            select (Was: Stitches(before), Is: Stitches(after), Holes: NeedleHoles.Of(before, after));
        if (!read.TryGet(out var both) || both.Was.Count + both.Is.Count == 0)
            return null;
        var work = Box.Around(both.Was.Concat(both.Is).SelectMany(s => new[] { s.From, s.To }));
        var (removed, added) = (Without(both.Was, both.Is), Without(both.Is, both.Was));
        var kept = Without(both.Is, added);
        var canvas = new Canvas();
        var panel = Math.Max(NarrowestPanel, work.Width);
        var (width, height) = ((3 * panel) + (4 * Margin), work.Height + Heading + KeyHeight + (2 * Margin));
        canvas.Area(new Box(0, 0, width, height), Colour.White);
        Panel(0, "before", (both.Was, Colour.Ink, Thin, 100));
        Panel(1, "after", (both.Is, Colour.Ink, Thin, 100));
        Panel(2, "difference", (kept, Same, Thin, 100), (removed, Old, Thick, 100), (added, New, Thick, Sheer));
        ImmutableArray<(Colour Ink, string Text)> key =
        [
            (Same, $"needle holes in both: {Figures.Count(both.Holes.Same)}"),
            (Old, $"needle holes only before: {Figures.Count(both.Holes.Gone)}"),
            (New, $"needle holes only after: {Figures.Count(both.Holes.New)}"),
        ];
        foreach (var (i, (ink, text)) in key.Index())
        {
            var left = Margin + (i * (panel + Margin));
            var down = height - Margin;
            canvas.Line(1000, ink, 100, new Point(left, down - 1500), new Point(left + 6000, down - 1500));
            canvas.Text(text, new(left + 9000, down), Letters, Colour.Ink);
        }
        return canvas.ToPicture(width, height, $"part {letter}: before, after, and the difference");

        void Panel(
            int index,
            string name,
            params (IReadOnlyCollection<Stitch> Of, Colour Ink, int Width, int Opacity)[] layers
        )
        {
            var (left, top) = (Margin + (index * (panel + Margin)), Heading + Margin);
            canvas.Text($"{letter} {name}", new(left, Heading), Letters, Colour.Ink);
            foreach (var (of, ink, pen, opacity) in layers)
                if (of.Count > 0)
                    canvas.Lines(
                        pen,
                        ink,
                        opacity,
                        [
                            .. of.Select(s =>
                                ImmutableArray.Create(
                                    new Point(s.From.X - work.Left + left, s.From.Y - work.Top + top),
                                    new Point(s.To.X - work.Left + left, s.To.Y - work.Top + top)
                                )
                            ),
                        ]
                    );
        }
    }

    private static List<Stitch> Stitches(ImmutableArray<SewnRun> runs) =>
        [.. runs.SelectMany(r => r.Points.Zip(r.Points.Skip(1), (from, to) => new Stitch(from, to)))];

    /// <summary>
    /// Those that the others do not have, in order, whichever way they are sewn; each of the others counts once.
    /// </summary>
    private static List<Stitch> Without(List<Stitch> stitches, List<Stitch> others)
    {
        var left = new Dictionary<Stitch, int>();
        foreach (var other in others.Select(Directed))
            left[other] = left.GetValueOrDefault(other) + 1;
        var only = new List<Stitch>();
        foreach (var stitch in stitches)
        {
            var key = Directed(stitch);
            if (left.GetValueOrDefault(key) is > 0 and var count)
                left[key] = count - 1;
            else
                only.Add(stitch);
        }
        return only;
    }

    private static Stitch Directed(Stitch stitch) =>
        stitch.From.CompareTo(stitch.To) <= 0 ? stitch : new(stitch.To, stitch.From);
}
