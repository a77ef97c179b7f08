using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// What a seam shows, in millimetres of plain fill that it cuts. Shares are common practice, no source: a misfit is
/// noticed at 0.5 mm in line work, at 1 mm between fills, and hardly where two colours meet anyway.
/// </summary>
internal static class SeamPrice
{
    /// <summary>
    /// A straight cut through a satin column or a line shows as a break of the whole stroke, however narrow: it counts as
    /// this much of a cut through plain fill, mm. An oblique cut shows over its greater length.
    /// </summary>
    internal const double LineCrossing = 10;

    /// <summary>A cut along the edge between two shapes: the eye expects a line there.</summary>
    internal const double AlongEdge = 0.25;

    /// <summary>Along the outline of a shape on bare cloth nothing is cut, but one side must not stray over the edge.</summary>
    internal const double AlongOutline = 0.1;

    /// <summary>
    /// Through a shape that one part sews whole: nothing is cut, but its outline lies beside the other part's work.
    /// </summary>
    internal const double ThroughWhole = 0.3;

    /// <summary>The same through a shape that must stay whole: its neighbours' misfit beside it shows more.</summary>
    internal const double ThroughKept = 0.6;

    /// <summary>How far apart a seam is looked at, µm.</summary>
    private const double Look = 250;

    /// <summary>
    /// A seam this near to an edge between two shapes lies along it, µm: half a millimetre, about a row of fill, is within
    /// what thread spreads.
    /// </summary>
    private const double Beside = 500;

    /// <summary>The price of one millimetre between two places that show these shapes; null is bare cloth.</summary>
    internal static double PerMillimetre(Surface surface, int? one, int? other) =>
        (one, other) switch
        {
            (null, null) => 0,
            (null, _) or (_, null) => AlongOutline,
            _ when one != other => AlongEdge,
            _ => Through(surface, one.Value),
        };

    /// <summary>The price of one millimetre through the middle of a shape.</summary>
    internal static double Through(Surface surface, int shape) =>
        surface.Drawing.Shapes[shape] switch
        {
            { KeepWhole: true } => ThroughKept,
            _ when !surface.IsCut(shape) => ThroughWhole,
            FillShape => 1,
            _ => 1 + (LineCrossing / Units.ToMillimetres(surface.WidthOf(shape))),
        };

    internal static double Of(Surface surface, IEnumerable<Seam> seams)
    {
        var sum = 0.0;
        foreach (var seam in seams)
        {
            sum += OnGround(surface, seam.Line);
            foreach (var run in surface.CutRuns)
                sum +=
                    surface.Clipping(run).Inside(seam.Line).Sum(cut => cut.Length / surface.WidthOf(run))
                    * LineCrossing;
        }
        return Math.Round(sum, 3);
    }

    private static double OnGround(Surface surface, Polyline line)
    {
        var sum = 0.0;
        for (var i = 1; i < line.Points.Length; i++)
        {
            var (from, to) = (line.Points[i - 1], line.Points[i]);
            var way = Vector.Between(from, to);
            var count = Math.Max(1, (int)Math.Ceiling(way.Length / Look));
            var aside = way.Unit.Left * Beside;
            var step = Units.ToMillimetres(way.Length) / count;
            for (var k = 0; k < count; k++)
            {
                var share = (k + 0.5) / count;
                var (x, y) = (from.X + (way.X * share), from.Y + (way.Y * share));
                var left = surface.TopAt(x + aside.X, y + aside.Y);
                var right = surface.TopAt(x - aside.X, y - aside.Y);
                sum += step * PerMillimetre(surface, left, right);
            }
        }
        return sum;
    }
}
