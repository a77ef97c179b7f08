using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fit;

/// <summary>
/// Where three parts or more meet, and what their misfits ask of overlaps there. If all places at which they come out lie
/// in a circle, then every part is off its middle by no more than the radius; so no hole opens as long as each reaches that
/// far. Three misfits of d need a reach of d/sqrt(3) so (Jung 1901), and not only the d/2 that two parts need: each may go
/// away from the next one, round and round.
/// </summary>
internal sealed class SeamJunctions
{
    /// <summary>
    /// Within this of a junction, µm, overlaps of its seams lie over each other, and its other junctions do, too: twice a
    /// usual overlap.
    /// </summary>
    private const int Near = 6 * Units.Millimetre;

    private readonly ImmutableArray<(Point At, ImmutableArray<int> Parts, double Diameter)> junctions;

    internal SeamJunctions(ImmutableArray<Seam> seams, PredictedFit fit)
    {
        var ends = seams
            .SelectMany(s => new[] { s.Line.Points[0], s.Line.Points[^1] }.Select(at => (At: at, Seam: s)))
            .ToList();
        junctions =
        [
            .. from at in ends.Select(e => e.At).Distinct().Order()
            let parts = ends.Where(e => e.At.DistanceTo(at) <= Near)
                .SelectMany(e => new[] { e.Seam.Earlier, e.Seam.Later })
                .Distinct()
                .Order()
                .ToImmutableArray()
            where parts.Length > 2
            let diameters = from c in parts
            from b in parts
            where b < c
            from a in parts
            where a < b
            select Diameter(fit.Within95(a, b, at), fit.Within95(b, c, at), fit.Within95(a, c, at))
            // Three of them decide how large a circle around all has to be.
            select (at, parts, diameters.Max()),
        ];
    }

    /// <summary>The largest circle where others meet two parts along their seams, µm; 0 where none do.</summary>
    internal double Along(int earlier, int later, IEnumerable<Point> seams)
    {
        var places = seams.ToList();
        return junctions
            .Where(j =>
                j.Parts.Contains(earlier)
                && j.Parts.Contains(later)
                && places.Exists(place => place.DistanceTo(j.At) <= Near)
            )
            .Select(j => j.Diameter)
            .DefaultIfEmpty(0)
            .Max();
    }

    /// <summary>
    /// Diameter of the smallest circle that holds three places, whole µm, from how far they are apart: that through all of
    /// them (a b c / 2 K, K the area by Heron's formula), or where one angle is not acute on the longest side.
    /// </summary>
    internal static double Diameter(double a, double b, double c)
    {
        var (aa, bb, cc) = (a * a, b * b, c * c);
        var longest = Math.Max(aa, Math.Max(bb, cc));
        if (2 * longest >= aa + bb + cc)
            return Math.Round(Math.Sqrt(longest));
        var area = (2 * ((aa * bb) + (bb * cc) + (cc * aa))) - (aa * aa) - (bb * bb) - (cc * cc);
        return Math.Round(2 * a * b * c / Math.Sqrt(area));
    }
}
