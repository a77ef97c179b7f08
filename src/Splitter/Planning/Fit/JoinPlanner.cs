using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Planning.Fit;

/// <summary>Predicts how well each pair of parts will meet, and sizes their overlap.</summary>
internal static class JoinPlanner
{
    /// <summary>Automatic overlaps are whole multiples of this, µm: a figure that a person can repeat.</summary>
    private const int OverlapStep = 100;

    /// <summary>
    /// How closely a seam is searched for its worst place, µm: small beside the distance of two corners.
    /// </summary>
    private const int SampleDistance = 5 * Units.Millimetre;

    /// <param name="jobs">How many threads may work.</param>
    internal static ImmutableArray<PartJoin> Plan(Recipe recipe, Division division, PredictedFit fit, int jobs = 1)
    {
        var junctions = new SeamJunctions(division.Seams, division.Crossings, fit, jobs);
        var meetings = division.Crossings.GroupBy(c => (c.Earlier, c.Later)).OrderBy(g => g.Key).ToList();
        return InOrder.Select(meetings, jobs, Join);

        PartJoin Join(IGrouping<(int, int), Crossing> meeting)
        {
            var (earlier, later) = meeting.Key;
            var misfits = meeting
                .SelectMany(c => Sampled(c.Line))
                .Distinct()
                .Select(p => (Budget: fit.Budget(earlier, later, p), At: p))
                .OrderByDescending(m => m.Budget.Total)
                .ThenBy(m => m.At)
                .ToList();
            var (budget, at) = misfits[0];
            // A longer and thinner spread elsewhere on the seam can reach further, though its mean square is less.
            var usual = 0.0;
            foreach (var m in misfits.TakeWhile(m => m.Budget.Total * NormalSpread.Most > usual))
                usual = Math.Max(usual, fit.Within95(earlier, later, m.At));
            var junction = junctions.Along(earlier, later, meeting.SelectMany(c => Sampled(c.Line)));
            var alongSeam = JoinFit.Misfit(usual);
            var worst = Math.Max(alongSeam, junction?.Misfit ?? 0);
            var overlap = Overlap(recipe.Overlap, worst, [.. meeting]);
            var rooms = meeting.SelectMany(c => c.Rooms);
            return new()
            {
                Earlier = earlier,
                Later = later,
                WorstAt = at,
                PredictedError = budget.Total,
                Budget = budget,
                AlongSeam = alongSeam,
                Junction = junction,
                Overlap = overlap,
                Narrowest = Math.Min(overlap, meeting.Min(c => c.Room)),
                Covers = JoinFit.Covered(overlap, rooms, recipe.Overlap.Edges),
            };
        }
    }

    /// <summary>
    /// Vertices and places between them. The part of the misfit that grows with the square of the distance has its
    /// maximum at a vertex; the stretch from the nearest corner may have it half way between two corners.
    /// </summary>
    private static IEnumerable<Point> Sampled(Polyline line)
    {
        for (var i = 1; i < line.Points.Length; i++)
        {
            var (from, to) = (line.Points[i - 1], line.Points[i]);
            var count = Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) / SampleDistance));
            for (var k = 0; k <= count; k++)
                yield return from.Towards(to, (double)k / count);
        }
    }

    /// <summary>
    /// What the recipe asks for, as far as both sides have room for it; where one of them has too little for the
    /// misfit, the other side reaches further, as far as it can.
    /// </summary>
    private static int Overlap(OverlapRules rules, int misfit, ImmutableArray<Crossing> crossings)
    {
        var needed = Automatic(misfit, crossings.Min(c => c.Room), rules.Edges);
        // Where a field ends so near to the seam that nothing worth the name fits, only the other side overlaps.
        var both = crossings
            .Select(c => c.Room)
            .Where(room => room >= SeamRoom.Least)
            .DefaultIfEmpty(SeamRoom.Least)
            .Min();
        var either = crossings.Max(c => c.Rooms.Max(room => room.Wider));
        return Math.Min(rules.Width ?? needed, Math.Max(both, Math.Min(needed, either)));
    }

    /// <summary>
    /// Enough for a misfit: both sides together, also where one of them has less room than the other.
    /// </summary>
    private static int Automatic(int misfit, int room, EdgeRule edges) =>
        (int)
            Math.Ceiling(
                Math.Max(SeamRoom.Least, Overlaps.ReachFor(Math.Max(misfit, 2.0 * (misfit - room)), edges))
                    / OverlapStep
            ) * OverlapStep;
}
