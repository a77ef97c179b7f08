using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Planning.Fit;

/// <summary>
/// Where three parts or more meet, and what their misfits ask of overlaps there. If all places at which they come out
/// lie in a circle, then every part is off its middle by no more than the radius; so no hole opens as long as each
/// reaches that far. Three misfits of d need a reach of up to d/sqrt(3) so (Jung 1901), and not only the d/2 that two
/// parts need: each may go away from the next one, round and round.
/// </summary>
internal sealed class SeamJunctions
{
    /// <summary>
    /// Within this of a junction, µm, overlaps of its seams lie over each other, and its other junctions do, too: twice
    /// a usual overlap.
    /// </summary>
    private const int Near = 6 * Units.Millimetre;

    private readonly ImmutableArray<Junction> junctions;

    /// <param name="seams">Where parts meet, on bare cloth too.</param>
    /// <param name="cut">
    /// Where they are cut. On bare cloth, and where a part sews a shape whole, no hole can open, so that a part which
    /// cuts nothing near a junction is no part of it.
    /// </param>
    /// <param name="jobs">How many threads may work.</param>
    internal SeamJunctions(ImmutableArray<Seam> seams, ImmutableArray<Crossing> cut, PredictedFit fit, int jobs = 1)
    {
        var ends = seams
            .SelectMany(s => new[] { s.Line.Points[0], s.Line.Points[^1] }.Select(at => (At: at, Seam: s)))
            .ToList();
        var crossings = cut.ToLookup(c => (c.Earlier, c.Later), c => c.Line);
        junctions = [.. InOrder.Select([.. ends.Select(e => e.At).Distinct().Order()], jobs, Met).OfType<Junction>()];

        Junction? Met(Point at)
        {
            var near = ends.Where(e => e.At.DistanceTo(at) <= Near).Select(e => e.Seam);
            var parts = Around(near.Select(s => (s.Earlier, s.Later)).Distinct().Where(pair => IsCut(pair, at)));
            return ends.Exists(e => e.At == at && parts.Contains(e.Seam.Earlier) && parts.Contains(e.Seam.Later))
                ? new(at, parts, JoinFit.Misfit(fit.Circle95(parts, at)))
                : null;
        }

        bool IsCut((int, int) pair, Point at) =>
            crossings[pair].Any(line => line.Bounds.Grown(Near).Contains(at) && line.DistanceTo(at) <= Near);
    }

    /// <summary>
    /// The parts that meet all round a place. Each of them has two others there as neighbours; so seams that only end
    /// side by side, as parallel ones do at the artwork's edge, make no junction, and one that ends near a junction is
    /// no part of it.
    /// </summary>
    /// <param name="meeting">Which of them meet there, two by two.</param>
    private static ImmutableArray<int> Around(IEnumerable<(int Earlier, int Later)> meeting)
    {
        var pairs = meeting.ToList();
        while (true)
        {
            var neighbours = pairs.SelectMany(p => new[] { p.Earlier, p.Later }).CountBy(part => part).ToDictionary();
            if (pairs.RemoveAll(p => neighbours[p.Earlier] == 1 || neighbours[p.Later] == 1) == 0)
                return [.. neighbours.Keys.Order()];
        }
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
