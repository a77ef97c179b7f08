using System.Collections.Immutable;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Stitching.Runs;

namespace Splitter.Stitching;

/// <summary>
/// Runs: one line of stitches along each line of the piece, the nearest line next. Lines that go on where another ends
/// are one block.
/// </summary>
internal static class RunStitcher
{
    /// <summary>Ends nearer than this are one place, µm: the thread is not cut for a step of the tape.</summary>
    private const double Meeting = 1.5 * Units.TapeStep;

    internal static ImmutableArray<Block> Stitch(RunPiece piece)
    {
        var blocks = ImmutableArray.CreateBuilder<Block>();
        var lines = piece.Lines;
        // A closed line can begin at any of its vertices, an open one at either end.
        var open = new Pool(
            lines.Select(l => l.IsClosed ? l.Points[..^1].AsEnumerable() : [l.Points[0], l.Points[^1]])
        );
        var path = new List<Point>();
        while (open.Left > 0)
        {
            var (index, which) = open.Take(path.Count > 0 ? path[^1] : null);
            var points = From(lines[index], which);
            if (path.Count > 0 && path[^1].DistanceTo(points[0]) > Meeting)
                Finish();
            path.AddRange(EvenRun.Along(points, piece.Shape.Style.StitchLength));
        }
        Finish();
        return blocks.ToImmutable();

        void Finish()
        {
            if (Ties.Fasten(piece.Shape.Id, path.Select(p => new Stitch(p, StitchUse.Run))) is { } block)
                blocks.Add(block);
            path.Clear();
        }
    }

    private static ImmutableArray<Point> From(Polyline line, int which) =>
        line.IsClosed ? [.. line.Points[which..], .. line.Points[1..(which + 1)]]
        : which == 0 ? line.Points
        : [.. line.Points.Reverse()];
}
