using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Correcting;

/// <summary>
/// What a correction does to the errors of joins. The part then lies as its measured places were read, and no more as
/// its corners were set; later parts that are set by its corners follow it.
/// </summary>
internal static class ExpectedFit
{
    /// <summary>Differences below a step of what is told are none, µm.</summary>
    private const int Told = 10;

    /// <summary>The joins of the part itself, and those of others that change.</summary>
    internal static ImmutableArray<JoinChange> Of(
        Recipe recipe,
        Drawing drawing,
        Plan plan,
        PredictedFit before,
        int hooping,
        ImmutableArray<TakenCorner> measured
    )
    {
        var after = new PredictedFit(recipe, plan.Hoopings.Length, plan.Corners, (hooping, measured));
        var seams = SeamStretches.Of(drawing, plan).ToLookup(s => (s.Seam.Earlier, s.Seam.Later));
        return
        [
            .. from planned in plan.Joins
            where planned.Later >= hooping
            let change = new JoinChange(planned, Expected(planned, after, seams[(planned.Earlier, planned.Later)]))
            where
                planned.Earlier == hooping
                || planned.Later == hooping
                || Math.Abs(change.After.Within95 - planned.Within95) >= Told
            select change,
        ];
    }

    private static PartJoin Expected(PartJoin join, PredictedFit fit, IEnumerable<SeamStretch> stretches)
    {
        Point[] places =
        [
            join.WorstAt,
            .. stretches
                .Where(s => s.Ground is SeamGround.Fill or SeamGround.LineWork)
                .SelectMany(s => s.Line.Points)
                .Distinct(),
        ];
        var worst = places.MaxBy(p => fit.Budget(join.Earlier, join.Later, p).Total);
        var budget = fit.Budget(join.Earlier, join.Later, worst);
        return join with
        {
            WorstAt = worst,
            PredictedError = budget.Total,
            Budget = budget,
            AlongSeam = JoinFit.Misfit(places.Max(p => fit.Within95(join.Earlier, join.Later, p))),
            Junction = join.Junction is { } junction
                ? junction with
                {
                    Misfit = JoinFit.Misfit(fit.Circle95(junction.Parts, junction.At)),
                }
                : null,
        };
    }
}
