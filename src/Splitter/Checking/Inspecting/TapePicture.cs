using System.Collections.Immutable;
using System.Globalization;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Checking.Inspecting;

/// <summary>A tape in true scale, seen in one of three ways.</summary>
internal static class TapePicture
{
    /// <summary>Steps that the key lists; a tape with more is hardly one.</summary>
    private const int MostListed = 60;

    internal static Picture Of(TapeReport report, TapeView view)
    {
        var page = new TapePage(view == TapeView.Density ? Squared(report.Trace.Bounds) : report.Trace.Bounds);
        return view switch
        {
            TapeView.Thread => Thread(page, report),
            TapeView.Penetrations => Holes(page, report),
            _ => Density(page, report),
        };
    }

    private static Picture Thread(TapePage page, TapeReport report) =>
        Draw(
            page,
            report,
            $"{Size(report)}; {(report.Threads.AreKnown ? "colours of the manifest" : "colours not the threads")}",
            TapePage.Cloth,
            () => Sew(page, report),
            [.. Steps(page, report, i => report.Threads.Steps[i])]
        );

    private static void Sew(TapePage page, TapeReport report)
    {
        page.LayCloth();
        foreach (var run in report.Trace.Runs)
            page.Canvas.Thread([page.Lay(run.Points)], report.Threads.Steps[run.Step - 1].Colour);
    }

    private static Picture Holes(TapePage page, TapeReport report)
    {
        var picture = new HolePicture(page);
        return Draw(
            page,
            report,
            $"{Size(report)}; {Figures.Many(report.Counts.Trims, "trim", "trims")}, "
                + $"{Figures.Many(report.Counts.Stops, "stop", "stops")}",
            TapePage.Cloth,
            () => picture.Draw(report.Trace),
            [
                (picture.MoveSign, "move without sewing"),
                (picture.TrimSign, "thread is cut"),
                // Not in the colours of the threads: their names would not be those of what is seen.
                .. Steps(page, report, i => new(null, StepThreads.QuietOf(i + 1))),
            ]
        );
    }

    private static Picture Density(TapePage page, TapeReport report)
    {
        var picture = new DensityPicture(page);
        var layers = report.Grid.Quarters.Select(report.Grid.LayersAt).ToList();
        return Draw(
            page,
            report,
            $"{Size(report)}; layers of thread 0.4 mm wide on each mm²",
            Colour.White,
            () => picture.Draw(report.Grid, report.Fullest),
            [
                .. LayerScale.Classes.Select<LayerClass, (Action<Point>, string)>(of =>
                    (
                        left => page.Swatch(left, of.Colour),
                        $"{of.Text}: {Figures.QuarterMillimetres(layers.Count(of.Holds))} mm²"
                    )
                ),
                (
                    picture.RingSign,
                    string.Create(CultureInfo.InvariantCulture, $"fullest: {report.LayersMost:0.0} layers")
                ),
            ]
        );
    }

    private static Picture Draw(
        TapePage page,
        TapeReport report,
        string line,
        Colour ground,
        Action work,
        ImmutableArray<(Action<Point> Sign, string Text)> key
    ) =>
        page.Draw(
            report.Label.Length > 0 ? report.Label : report.Name,
            line,
            ground,
            work,
            key,
            $"{report.Name}: {report.Label}"
        );

    private static string Size(TapeReport report) =>
        $"{Figures.Many(report.Counts.Stitches, "stitch", "stitches")}, "
        + $"{Figures.Millimetres(report.Trace.Bounds.Width)} x {Figures.Millimetres(report.Trace.Bounds.Height)} "
        + "mm";

    /// <param name="thread">As a step is drawn, from 0.</param>
    private static IEnumerable<(Action<Point>, string)> Steps(
        TapePage page,
        TapeReport report,
        Func<int, StepThread> thread
    ) =>
        report
            .Counts.Steps.Take(MostListed)
            .Select<int, (Action<Point>, string)>(
                (stitches, i) =>
                    (
                        left => page.Swatch(left, thread(i).Colour),
                        $"{Named(i + 1, thread(i))}: {Figures.Count(stitches)}"
                    )
            );

    private static string Named(int step, StepThread thread) =>
        thread.Name is { } name ? $"{step} {name}" : $"step {step}";

    /// <summary>Whole square millimetres.</summary>
    private static Box Squared(Box box) =>
        new(Down(box.Left), Down(box.Top), Down(box.Right) + Units.Millimetre, Down(box.Bottom) + Units.Millimetre);

    private static int Down(int micrometres) =>
        (int)Math.Floor(micrometres / (double)Units.Millimetre) * Units.Millimetre;
}
