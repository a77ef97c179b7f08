using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fit;

/// <summary>
/// Where three parts or more meet, and what their misfits ask of overlaps there. If all places at which they come out lie
/// in a circle, then every part is off its middle by no more than the radius; so no hole opens as long as each reaches that
/// far. Three misfits of d need a reach of up to d/sqrt(3) so (Jung 1901), and not only the d/2 that two parts need: each may
/// go away from the next one, round and round.
/// </summary>
internal sealed class SeamJunctions
{
    /// <summary>
    /// Within this of a junction, µm, overlaps of its seams lie over each other, and its other junctions do, too: twice a
    /// usual overlap.
    /// </summary>
    private const int Near = 6 * Units.Millimetre;

    private readonly ImmutableArray<Junction> junctions;

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
            select new Junction(at, parts, JoinFit.Misfit(fit.Circle95(parts, at))),
        ];
    }

    /// <summary>The junction with the largest circle where others meet two parts along their seams.</summary>
    internal Junction? Along(int earlier, int later, IEnumerable<Point> seams)
    {
        var places = seams.ToList();
        return junctions
            .Where(j =>
                j.Parts.Contains(earlier)
                && j.Parts.Contains(later)
                && places.Exists(place => place.DistanceTo(j.At) <= Near)
            )
            .MaxBy(j => j.Misfit);
    }
}
