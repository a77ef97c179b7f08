using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Outputs.Tapes;

namespace Splitter.Checking;

/// <summary>
/// A tape in true scale. It holds no colours, so each step takes the next of ours; moves without sewing are thin lines, and
/// a small cross marks where the tape starts.
/// </summary>
internal static class TapePicture
{
    private const int Margin = 10 * Units.Millimetre;
    private const int Header = 18 * Units.Millimetre;
    private const int NarrowestPage = 130 * Units.Millimetre;
    private const int RowHeight = 6 * Units.Millimetre;
    private const int Letters = 2600;

    /// <summary>Steps that are listed; a tape with more is hardly one.</summary>
    private const int MostListed = 60;

    internal static Picture Of(string file, Tape tape, TapeCounts counts)
    {
        var canvas = new Canvas();
        var bounds = counts.Bounds;
        var (width, height) = (Length(bounds.Right - bounds.Left), Length(bounds.Top - bounds.Bottom));
        var page = Math.Max(NarrowestPage, width + (2 * Margin));
        var below = Header + height + (2 * Margin);
        var full = below + (2 * RowHeight) + (Math.Min(MostListed, counts.Steps.Length) * RowHeight) + Margin;
        var left = (page - width) / 2;
        Point Lay(int u, int v) => new(left + Length(u - bounds.Left), Header + Margin + Length(bounds.Top - v));

        canvas.Area(new Box(0, 0, page, full), Colour.White);
        canvas.Text(tape.Label.Length > 0 ? tape.Label : file, new(Margin, 12_000), 5000, Colour.Ink);
        canvas.Text(
            $"{Figures.Count(counts.Stitches)} stitches, {Figures.Many(counts.Trims, "trim", "trims")}, {Figures.Many(counts.Stops, "stop", "stops")}, {Figures.Millimetres(width)} x {Figures.Millimetres(height)} mm",
            new(Margin, Header),
            Letters,
            Colour.Ink
        );
        canvas.Outline(new(left, Header + Margin, left + width, Header + Margin + height), 200, MarkInk.Frame);
        var (steps, moves) = Trace(tape, Lay);
        foreach (var (runs, i) in steps.Select((s, i) => (s, i)).Where(s => !s.s.IsEmpty))
            canvas.Thread(runs, MarkInk.Field(i));
        if (!moves.IsEmpty)
            canvas.Lines(120, MarkInk.Frame, 80, moves);
        Start(canvas, Lay(0, 0), new(0, Header, page, below));
        ScaleBar.Draw(canvas, new(Margin, below), page - (2 * Margin) - (20 * Units.Millimetre), Letters);
        foreach (var (stitches, i) in counts.Steps.Take(MostListed).Select((s, i) => (s, i)))
        {
            var y = below + ((i + 2) * RowHeight);
            canvas.Line(800, MarkInk.Field(i), 100, new(Margin, y - 1300), new(Margin + 5000, y - 1300));
            canvas.Text($"step {i + 1}: {Figures.Count(stitches)}", new(Margin + 8000, y), Letters, Colour.Ink);
        }
        return canvas.ToPicture(page, full, $"{file}: {tape.Label}");
    }

    private static int Length(int steps) => steps * Units.TapeStep;

    /// <summary>Runs of each step, and the moves between them.</summary>
    private static (
        ImmutableArray<ImmutableArray<ImmutableArray<Point>>> Steps,
        ImmutableArray<ImmutableArray<Point>> Moves
    ) Trace(Tape tape, Func<int, int, Point> lay)
    {
        var steps = ImmutableArray.CreateBuilder<ImmutableArray<ImmutableArray<Point>>>();
        var runs = ImmutableArray.CreateBuilder<ImmutableArray<Point>>();
        var run = ImmutableArray.CreateBuilder<Point>();
        var moves = ImmutableArray.CreateBuilder<ImmutableArray<Point>>();
        var (u, v) = (0, 0);
        foreach (var record in tape.Records)
        {
            var from = lay(u, v);
            (u, v) = (u + record.U, v + record.V);
            if (record.Command == TapeCommand.Stitch)
            {
                run.Add(lay(u, v));
                continue;
            }
            EndRun();
            if (record.Command == TapeCommand.Stop)
                EndStep();
            if ((record.U, record.V) != (0, 0))
                moves.Add([from, lay(u, v)]);
        }
        EndRun();
        EndStep();
        return (steps.ToImmutable(), moves.ToImmutable());

        void EndRun()
        {
            if (run.Count > 0)
                runs.Add(run.ToImmutable());
            run.Clear();
        }

        void EndStep()
        {
            steps.Add(runs.ToImmutable());
            runs.Clear();
        }
    }

    private static void Start(Canvas canvas, Point at, Box shown)
    {
        if (!shown.Contains(at))
            return;
        const int Arm = 2 * Units.Millimetre;
        canvas.Line(250, MarkInk.Corner, 100, new(at.X - Arm, at.Y), new(at.X + Arm, at.Y));
        canvas.Line(250, MarkInk.Corner, 100, new(at.X, at.Y - Arm), new(at.X, at.Y + Arm));
    }
}
