using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Planning.Fields;
using Splitter.Planning.Marks;
using Splitter.Planning.Order;
using Splitter.Planning.Remedies;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Planning;

/// <summary>
/// Drawing and hoop to <see cref="Plan"/>. Fields are laid first; straight seams show roughly where they will meet, enough
/// to put them into sewing order; knowing that order, seams divide the drawing where it shows least (what is sewn last may
/// hide one); marks let each hooping find the last.
/// </summary>
internal static class Planner
{
    internal static Result<Plan> Plan(Recipe recipe, Drawing drawing, Hoop hoop) =>
        from draft in Draft(recipe, drawing, hoop)
        from plan in Result.From(
            Finished(recipe, drawing, draft),
            [.. JoinRemedies.Warnings(recipe, drawing, draft), .. ClothEdge.Warnings(recipe, draft.Layout.Fields)]
        )
        select plan;

    /// <summary>The draft of the layout whose seams show least.</summary>
    internal static Result<PlanDraft> Draft(Recipe recipe, Drawing drawing, Hoop hoop) =>
        from layouts in FieldPlacer.Place(recipe, drawing, hoop)
        from draft in DraftChoice.Best([
            // In parallel, in the order of the layouts.
            .. DraftChoice
                .Tried(drawing, layouts)
                .AsParallel()
                .AsOrdered()
                .Select(layout => Draft(recipe, drawing, hoop, layout)),
        ])
        select draft;

    private static Result<PlanDraft> Draft(Recipe recipe, Drawing drawing, Hoop hoop, Layout placed) =>
        from sequence in SewingOrder.Choose(recipe, drawing, placed, Divider.Rough(drawing, placed))
        let layout = placed.Reordered(sequence.Order)
        let division = Divider.Divide(recipe.Overlap, drawing, layout)
        from corners in CornerPlacer.Place(recipe, drawing, layout, division, sequence)
        let fit = new PredictedFit(recipe, sequence, corners)
        from joins in JoinPlanner.Plan(recipe, layout, division, fit)
        select new PlanDraft(hoop, layout, sequence, division, corners, joins);

    private static Plan Finished(Recipe recipe, Drawing drawing, PlanDraft draft)
    {
        var (hoop, layout, _, division, corners, joins) = draft;
        return new()
        {
            Hoop = hoop,
            Hoopings =
            [
                .. layout.Fields.Select(
                    (field, i) =>
                        new Hooping
                        {
                            Letter = Letters.Of(i),
                            Field = field,
                            InThroat = Turning.InThroat(recipe, field),
                            Ground = layout.Grounds[i],
                            Territory = division.Territories[i],
                            Takes = Indexes(corners, c => c.Receivers.Contains(i)),
                            Gives = Indexes(corners, c => c.Donor == i),
                            Alignments = AlignmentPlacer.Place(recipe, drawing, layout, division, corners, i),
                        }
                ),
            ],
            LowerBound = layout.LowerBound,
            Owners = division.Owners,
            SeamLines = division.Seams,
            TurnedLayers = division.Turned,
            Joins = joins,
            Corners = corners,
            PlacementLines = Folds.LinesIn(recipe.Cloth, layout.Fields[0]),
            Seams = division.Cost,
        };
    }

    private static ImmutableArray<int> Indexes(ImmutableArray<Corner> corners, Func<Corner, bool> belongs) =>
        [.. Enumerable.Range(0, corners.Length).Where(i => belongs(corners[i]))];
}
