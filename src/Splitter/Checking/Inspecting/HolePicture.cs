using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Checking.Inspecting;

/// <summary>Every needle hole, moves without sewing as thin dashes, and a cross where a thread is cut.</summary>
internal sealed class HolePicture(TapePage page)
{
    /// <summary>
    /// Width of the hole that stays, µm: a needle of 0.75 mm pushes threads of the cloth aside, which close around the
    /// sewn thread. Common practice, no source.
    /// </summary>
    private const int Hole = 300;

    private const int MoveWidth = 120;
    private const int Dash = 800;
    private const int TrimArm = 700;

    internal void MoveSign(Point left) => Move(left, left with { X = left.X + TapePage.SwatchWidth });

    internal void TrimSign(Point left) => Trim(left with { X = left.X + (TapePage.SwatchWidth / 2) });

    internal void Draw(TapeTrace trace)
    {
        foreach (var move in trace.Moves)
            Move(page.Lay(move.From), page.Lay(move.To));
        foreach (var step in trace.Runs.GroupBy(r => r.Step))
            page.Canvas.Lines(
                Hole,
                StepThreads.QuietOf(step.Key),
                100,
                [.. step.SelectMany(r => page.Lay(r.Points)).Select(p => ImmutableArray.Create(p))]
            );
        foreach (var move in trace.Moves.Where(m => m.Trimmed))
            Trim(page.Lay(move.From));
    }

    private void Move(Point from, Point to) => page.Canvas.Dashes(MoveWidth, Dash, MarkInk.Frame, from, to);

    private void Trim(Point at) =>
        page.Canvas.Lines(
            250,
            MarkInk.Corner,
            100,
            [
                [new(at.X - TrimArm, at.Y - TrimArm), new(at.X + TrimArm, at.Y + TrimArm)],
                [new(at.X - TrimArm, at.Y + TrimArm), new(at.X + TrimArm, at.Y - TrimArm)],
            ]
        );
}
