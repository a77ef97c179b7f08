using System.Collections.Immutable;
using Splitter.Checking.Inspecting;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Checking;

/// <summary>
/// A part as it was, as it is, and both over each other, side by side in true scale as they lie on the drawing.
/// </summary>
internal sealed class DifferencePicture
{
    private const int Margin = 8 * Units.Millimetre;
    private const int Heading = 12 * Units.Millimetre;
    private const int Letters = 3000;
    private const int RowHeight = 7 * Units.Millimetre;
    private const int KeyRows = 3;

    /// <summary>Of cloth around the work.</summary>
    private const int Border = 3 * Units.Millimetre;

    /// <summary>Room for a heading above a narrow part, and for a line of the key below it.</summary>
    private const int NarrowestPanel = 80 * Units.Millimetre;

    /// <summary>Of a line that shows a stitch: thinner than thread, so that neighbours are told apart.</summary>
    private const int Thin = 200;

    /// <summary>Of stitches that are new, so that a single one is seen.</summary>
    private const int Thick = 350;

    /// <summary>Of those that are gone: what came shows at their sides.</summary>
    private const int Slender = 250;

    private const int Dash = 800;

    // Blue and orange are told apart also by those who see red and green alike, dashes by those who see no colour.
    private static readonly Colour Same = Colour.Of("#b5b0a6");
    private static readonly Colour Old = Colour.Of("#e07b12");
    private static readonly Colour New = Colour.Of("#1b5fa8");

    private readonly record struct Side(ImmutableArray<SewnRun> Runs, StepThreads Threads);

    private readonly Canvas canvas = new();
    private readonly Box work;
    private readonly int panel;
    private readonly ImmutableArray<(Point Centre, int Radius)> spots;

    private DifferencePicture(Box work, ImmutableArray<(Point, int)> spots)
    {
        (this.work, this.spots) = (work, spots);
        panel = Math.Max(NarrowestPanel, work.Width);
    }

    /// <summary>Null where nothing is sewn, or a tape cannot be read.</summary>
    internal static Picture? Of(string letter, SetSide old, SetSide now)
    {
        var to = now.FieldOf(letter);
        var read =
            from before in old.Runs(letter, old.FieldOf(letter, to))
            from after in now.Runs(letter, to)
            from dyed in old.Threads(letter)
            from dyes in now.Threads(letter)
            select (Was: new Side(before, dyed), Is: new Side(after, dyes));
        if (!read.TryGet(out var both) || both.Was.Runs.Length + both.Is.Runs.Length == 0)
            return null;
        var ground = Box.Around(both.Was.Runs.Concat(both.Is.Runs).SelectMany(r => r.Points)).Grown(Border);
        var (was, isNow) = (SewnStitch.Of(both.Was.Runs), SewnStitch.Of(both.Is.Runs));
        var (gone, added) = (SewnStitch.Without(was, isNow), SewnStitch.Without(isNow, was));
        var drawn = new DifferencePicture(ground, ChangedSpots.Of(gone.Concat(added)));
        return drawn.Draw(letter, both.Was, both.Is, gone, added, now.Manifest.Cloth ?? TapePage.Cloth);
    }

    private Picture Draw(
        string letter,
        Side was,
        Side isNow,
        List<SewnStitch> gone,
        List<SewnStitch> added,
        Colour cloth
    )
    {
        var (width, below) = ((3 * panel) + (4 * Margin), Heading + Margin + work.Height);
        var height = below + Margin + (KeyRows * RowHeight);
        canvas.Area(new Box(0, 0, width, height), Colour.White);
        Sewn(0, $"{letter} before", was, cloth);
        Sewn(1, $"{letter} after", isNow, cloth);
        Caption(2, $"{letter} difference");
        Lines(SewnStitch.Without(SewnStitch.Of(isNow.Runs), added), Same, Thin);
        Lines(added, New, Thick);
        // Above what came, which shows between the dashes.
        Lines(gone, Old, Slender, dashed: true);
        for (var i = 0; i < 3; i++)
            foreach (var (centre, radius) in spots)
            {
                canvas.Ring(Lay(centre, i), radius, 1200, Colour.White);
                canvas.Ring(Lay(centre, i), radius, 600, Colour.Ink);
            }
        ScaleBar.Draw(canvas, new(Margin, below + RowHeight), panel - (20 * Units.Millimetre), Letters);
        Key(below, NeedleHoles.Of(was.Runs, isNow.Runs));
        return canvas.ToPicture(width, height, $"part {letter}: before, after, and the difference");
    }

    private void Sewn(int index, string caption, Side side, Colour cloth)
    {
        Caption(index, caption);
        canvas.Cloth(
            Box.Around([Lay(new(work.Left, work.Top), index), Lay(new(work.Right, work.Bottom), index)]),
            cloth
        );
        foreach (var run in side.Runs)
            canvas.Thread(
                [
                    [.. run.Points.Select(p => Lay(p, index))],
                ],
                side.Threads.Steps[run.Step - 1].Colour
            );
    }

    private void Lines(List<SewnStitch> stitches, Colour ink, int pen, bool dashed = false)
    {
        ImmutableArray<ImmutableArray<Point>> lines =
        [
            .. SewnStitch
                .Lines(stitches)
                .Select(line => line.Select(p => Lay(p, 2)).ToImmutableArray())
                .SelectMany(line => dashed ? Dashed.Cut(line, Dash, Dash) : [line]),
        ];
        if (!lines.IsEmpty)
            canvas.Lines(pen, ink, 100, lines);
    }

    private void Caption(int index, string text) =>
        canvas.Text(text, new(Lay(new(work.Left, 0), index).X, Heading), Letters, Colour.Ink);

    private void Key(int below, NeedleHoles holes)
    {
        var left = Lay(new(work.Left, 0), 2).X;
        Row(0, Same, $"needle holes in both: {Figures.Count(holes.Same)}");
        Row(1, Old, $"needle holes only before: {Figures.Count(holes.Gone)}", dashed: true);
        Row(2, New, $"needle holes only after: {Figures.Count(holes.New)}");
        if (spots.IsEmpty)
            return;
        var middle = Lay(new(work.Left, 0), 1).X;
        canvas.Ring(new(middle + 3000, below + RowHeight - 1000), 2000, 600, Colour.Ink);
        canvas.Text("a change of a few stitches", new(middle + 9000, below + RowHeight), Letters, Colour.Ink);

        void Row(int row, Colour ink, string text, bool dashed = false)
        {
            var y = below + ((row + 1) * RowHeight);
            Point[] sign = [new(left, y - 1500), new(left + 6000, y - 1500)];
            if (dashed)
                canvas.Lines(1000, ink, 100, Dashed.Cut([.. sign], 1500, 1500));
            else
                canvas.Line(1000, ink, 100, sign);
            canvas.Text(text, new(left + 9000, y), Letters, Colour.Ink);
        }
    }

    private Point Lay(Point p, int index) =>
        new(p.X - work.Left + Margin + (index * (panel + Margin)), p.Y - work.Top + Heading + Margin);
}
