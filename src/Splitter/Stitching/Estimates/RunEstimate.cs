using System.Collections.Immutable;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Stitching.Runs;

namespace Splitter.Stitching.Estimates;

/// <summary>Stitches of lines: each length from corner to corner in stitches, lines that go on where another ends in one go.</summary>
internal static class RunEstimate
{
    internal static PieceEstimate Of(RunPiece piece)
    {
        var stitches = piece.Lines.Sum(line => Stitches(line.Points, piece.Shape.Style.StitchLength));
        var starts = piece.Lines.Select(l => l.Points[0]).ToHashSet();
        var goOn = piece.Lines.Count(l => !l.IsClosed && starts.Contains(l.Points[^1]));
        var blocks = piece.Lines.Length - Math.Min(goOn, piece.Lines.Length - 1);
        return new(stitches + blocks, blocks);
    }

    private static double Stitches(ImmutableArray<Point> points, double longest)
    {
        var (stitches, length) = (0.0, 0.0);
        for (var i = 1; i < points.Length; i++)
        {
            length += points[i - 1].DistanceTo(points[i]);
            if (i < points.Length - 1 && !EvenRun.IsCorner(points[i - 1], points[i], points[i + 1]))
                continue;
            stitches += Math.Ceiling(length / longest);
            length = 0;
        }
        return stitches;
    }
}
