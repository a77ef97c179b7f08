using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Stitching;

namespace Splitter.Parts;

/// <summary>
/// Stitches of placement lines, corners and alignment crosses. They come out again, so they are not tied.
/// </summary>
internal static class MarkStitcher
{
    /// <summary>Stitch of a placement line on bare stabilizer, µm. Common practice, no source: 2 to 3 mm.</summary>
    private const int LineStitch = 3 * Units.Millimetre;

    /// <summary>
    /// Stitch of a corner or cross, µm: long, so that few stitches are to be taken out, and so that an arm of the usual
    /// 8 mm has a hole at its end, its middle and where the arms meet. Common practice, no source.
    /// </summary>
    private const int LooseStitch = 4 * Units.Millimetre;

    internal static Block Line(PlacementLine line) =>
        Path(line.Fold == Fold.Upright ? "fold-upright" : "fold-level", LineStitch, line.From, line.To);

    /// <summary>One arm, the meeting point, the other arm: the needle goes down exactly where the arms meet.</summary>
    internal static Block Corner(Corner corner) => Path(corner.Id, LooseStitch, corner.ArmX, corner.At, corner.ArmY);

    /// <summary>Both strokes of the cross in one go, through its middle.</summary>
    internal static Block Cross(AlignmentStitch alignment)
    {
        var (at, arm) = (alignment.At, alignment.Stroke);
        return Path(
            $"check-{alignment.On}",
            LooseStitch,
            new(at.X - arm, at.Y),
            at,
            new(at.X + arm, at.Y),
            at,
            new(at.X, at.Y - arm),
            at,
            new(at.X, at.Y + arm)
        );
    }

    private static Block Path(string of, int longest, params ReadOnlySpan<Point> points)
    {
        var stitches = ImmutableArray.CreateBuilder<Stitch>();
        stitches.Add(new(points[0], StitchUse.Mark));
        for (var i = 1; i < points.Length; i++)
        {
            var count = Math.Max(1, (int)Math.Ceiling(points[i - 1].DistanceTo(points[i]) / longest));
            for (var k = 1; k <= count; k++)
                stitches.Add(new(points[i - 1].Towards(points[i], (double)k / count).OnTape(), StitchUse.Mark));
        }
        return new(of, stitches.ToImmutable());
    }
}
