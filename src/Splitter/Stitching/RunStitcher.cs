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
        var open = piece.Lines.ToList();
        var path = new List<Point>();
        while (open.Count > 0)
        {
            var line = path.Count == 0 ? open[0].Points : TakeNearest(open, path[^1]);
            if (path.Count == 0)
                open.RemoveAt(0);
            else if (path[^1].DistanceTo(line[0]) > Meeting)
                Finish();
            path.AddRange(EvenRun.Along(line, piece.Shape.Style.StitchLength));
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

    /// <summary>The line with a place to begin nearest to where the needle is, from that place on.</summary>
    private static ImmutableArray<Point> TakeNearest(List<Polyline> open, Point needle)
    {
        var (best, index, at) = (double.PositiveInfinity, 0, 0);
        for (var i = 0; i < open.Count; i++)
        {
            var points = open[i].Points;
            // A closed line can begin at any of its vertices, an open one at either end.
            for (var k = 0; k < points.Length; k += open[i].IsClosed ? 1 : points.Length - 1)
                if (points[k].DistanceTo(needle) is var distance && distance < best)
                    (best, index, at) = (distance, i, k);
        }
        var line = open[index];
        open.RemoveAt(index);
        return line.IsClosed ? [.. line.Points[at..], .. line.Points[1..(at + 1)]]
            : at == 0 ? line.Points
            : [.. line.Points.Reverse()];
    }
}
