using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching.Density;
using Splitter.Tapes;

namespace Splitter.Checking.Inspecting;

/// <summary>What is sewn between two moves: needle holes in sewing order.</summary>
/// <param name="Step">From 1.</param>
internal sealed record TapeRun(int Step, ImmutableArray<Point> Points);

/// <summary>A move without sewing.</summary>
/// <param name="Trimmed">The thread is cut where it begins.</param>
internal sealed record TapeMove(Point From, Point To, bool Trimmed);

/// <summary>
/// What a machine does with a tape, as lines on a plane. Micrometres from where the tape starts, x right and y down.
/// </summary>
internal sealed record TapeTrace(ImmutableArray<TapeRun> Runs, ImmutableArray<TapeMove> Moves)
{
    internal Box Bounds { get; } = Box.Around(Runs.SelectMany(r => r.Points));

    internal static TapeTrace Of(Tape tape)
    {
        var runs = ImmutableArray.CreateBuilder<TapeRun>();
        var moves = ImmutableArray.CreateBuilder<TapeMove>();
        var run = ImmutableArray.CreateBuilder<Point>();
        var (u, v, step, jumps, sewn) = (0, 0, 1, 0, false);
        var (here, left) = (default(Point), default(Point));
        foreach (var record in tape.Records)
        {
            (u, v) = (u + record.U, v + record.V);
            here = new(u * Units.TapeStep, -v * Units.TapeStep);
            switch (record.Command)
            {
                case TapeCommand.Stitch:
                    EndMove();
                    run.Add(here);
                    sewn = true;
                    break;
                case TapeCommand.Jump:
                    EndRun();
                    jumps++;
                    break;
                default:
                    EndRun();
                    EndMove();
                    (step, sewn) = (step + 1, false);
                    break;
            }
            left = jumps == 0 ? here : left;
        }
        EndRun();
        EndMove();
        return new(runs.ToImmutable(), moves.ToImmutable());

        void EndRun()
        {
            if (run.Count > 0)
                runs.Add(new(step, run.ToImmutable()));
            run.Clear();
        }

        void EndMove()
        {
            if (jumps > 0)
                moves.Add(new(left, here, sewn && jumps >= TapeRecord.TrimJumps));
            jumps = 0;
        }
    }

    /// <summary>Length of thread on the cloth, µm.</summary>
    internal double Length => Stitches.Sum(s => s.From.DistanceTo(s.To));

    /// <summary>By mass: a tape does not say what a stitch is for.</summary>
    internal ThreadGrid ToGrid()
    {
        var grid = new ThreadGrid(Bounds);
        foreach (var hole in Runs.SelectMany(r => r.Points))
            grid.Pierce(hole);
        foreach (var (from, to) in Stitches)
            grid.Lay(from, to, ThreadGrid.ThreadWidth);
        return grid;
    }

    private IEnumerable<(Point From, Point To)> Stitches =>
        Runs.SelectMany(r => r.Points.Zip(r.Points.Skip(1), (from, to) => (from, to)));
}
