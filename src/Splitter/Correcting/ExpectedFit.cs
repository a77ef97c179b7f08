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
/// <param name="followed">What a stretch that is followed adds; null for none.</param>
internal sealed class ExpectedFit(Recipe recipe, Drawing drawing, Plan plan, int hooping, FollowedSpread? followed)
{
    /// <summary>Differences below a step of what is told are none, µm.</summary>
    private const int Told = 10;

    private readonly ILookup<(int, int), SeamStretch> seams = SeamStretches
        .Of(drawing, plan)
        .ToLookup(s => (s.Seam.Earlier, s.Seam.Later));

    /// <summary>The joins of the part itself, and those of others that change.</summary>
    /// <param name="measured">
    /// Places that showed both ways. What edges showed makes the part lie nearer than is expected here, if it does
    /// anything.
    /// </param>
    internal ImmutableArray<JoinChange> With(ImmutableArray<TakenCorner> measured)
    {
        var after = new PredictedFit(
            recipe,
            plan.Hoopings.Length,
            plan.Corners,
            new(hooping, measured, followed is null ? null : followed.At)
        );
        return
        [
            .. from planned in plan.Joins
            where planned.Later >= hooping
            let change = new JoinChange(planned, Expected(planned, after))
            where change.Joins(hooping) || Math.Abs(change.After.Within95 - planned.Within95) >= Told
            select change,
        ];
    }

    private PartJoin Expected(PartJoin join, PredictedFit fit)
    {
        Point[] places =
        [
            join.WorstAt,
            .. seams[(join.Earlier, join.Later)]
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
