using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Planning.Fields;
using Splitter.Planning.Fit;
using Splitter.Planning.Marks;
using Splitter.Planning.Order;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Planning.Drafting;

/// <summary>
/// Drawing and hoop to a draft. Fields are laid first; straight seams show roughly where they will meet, enough to put
/// them into sewing order; knowing that order, seams divide the drawing where it shows least (what is sewn last may
/// hide one); corners let each hooping find the last, and from them follows how well they will meet. Then fields are
/// moved to where these seams show less, and it is drafted once more.
/// </summary>
internal static class Drafter
{
    /// <summary>The draft of the layout whose seams show least.</summary>
    /// <param name="jobs">How many threads may work.</param>
    internal static Result<PlanDraft> Draft(Recipe recipe, Drawing drawing, Hoop hoop, int jobs) =>
        from layouts in FieldPlacer.Place(recipe, drawing, hoop, jobs)
        let tried = DraftChoice.Tried(drawing, layouts)
        let each = InOrder.Each(jobs, tried.Length)
        let drafts = InOrder.Select(tried, jobs, layout => Draft(recipe, drawing, hoop, layout, each))
        from draft in Busy(recipe, drawing, Refined(recipe, drawing, drafts, jobs), jobs)
        select draft;

    /// <summary>
    /// The draft without hoopings that sew nothing, but for those that the rest needs to reach each other.
    /// </summary>
    private static Result<PlanDraft> Busy(Recipe recipe, Drawing drawing, Result<PlanDraft> drafted, int jobs)
    {
        if (!drafted.TryGet(out var draft) || Yields.Empty(drawing, draft.Division) is not { IsEmpty: false } empty)
            return drafted;
        var layout = FieldPlacer.Without(recipe, drawing, draft.Layout, empty);
        if (layout.Fields.Length == draft.Layout.Fields.Length)
            return drafted;
        var fewer = Draft(recipe, drawing, draft.Hoop, layout, jobs);
        return fewer.Succeeded ? Busy(recipe, drawing, fewer, jobs) : drafted;
    }

    /// <summary>The best of some drafts, or of the most promising ones with their fields moved.</summary>
    private static Result<PlanDraft> Refined(
        Recipe recipe,
        Drawing drawing,
        ImmutableArray<Result<PlanDraft>> drafts,
        int jobs
    ) =>
        DraftChoice.Best(
            drawing,
            [
                DraftChoice.Best(drawing, drafts),
                .. DraftChoice.Least(drafts).Select(draft => Refined(recipe, drawing, draft, jobs)),
            ]
        );

    /// <summary>
    /// The draft with its fields moved a little, now that it is known how seams run, if that makes it better.
    /// </summary>
    private static Result<PlanDraft> Refined(Recipe recipe, Drawing drawing, Result<PlanDraft> drafted, int jobs)
    {
        if (
            !drafted.TryGet(out var draft)
            || recipe.Fields.Place is not FewestFields
            || recipe.Overlap.Seams != SeamRule.LeastVisible
            || draft.Division.Cost.Cost == 0
            || !DraftChoice.CanDraftMore(drawing, draft.Layout)
        )
            return drafted;
        var layout = FieldPlacer.Refined(recipe, drawing, draft.Layout, new SeamTrial(drawing).Shown, jobs);
        if (layout.Fields.SequenceEqual(draft.Layout.Fields))
            return drafted;
        // Another order may suit the moved fields better, but it was in this one that they were moved.
        Func<Result<PlanDraft>>[] ways =
        [
            () => Draft(recipe, drawing, draft.Hoop, layout, draft.Sequence, InOrder.Each(jobs, 2)),
            () => Draft(recipe, drawing, draft.Hoop, layout, InOrder.Each(jobs, 2)),
        ];
        return DraftChoice.Best(drawing, [drafted, .. InOrder.Select(ways, jobs, way => way())]);
    }

    private static Result<PlanDraft> Draft(Recipe recipe, Drawing drawing, Hoop hoop, Layout placed, int jobs) =>
        from sequence in SewingOrder.Choose(recipe, drawing, placed, Divider.Rough(drawing, placed, jobs))
        from draft in Draft(recipe, drawing, hoop, placed.Reordered(sequence.Order), sequence, jobs)
        select draft;

    /// <param name="layout">In sewing order.</param>
    private static Result<PlanDraft> Draft(
        Recipe recipe,
        Drawing drawing,
        Hoop hoop,
        Layout layout,
        Sequence sequence,
        int jobs
    ) =>
        from division in Result.Of(Divider.Divide(recipe.Overlap, drawing, layout, jobs))
        from placed in CornerPlacer.Place(recipe, drawing, layout, division, sequence, jobs)
        let fit = new PredictedFit(recipe, layout.Fields.Length, placed.Corners)
        let joins = JoinPlanner.Plan(recipe, division, fit, jobs)
        select new PlanDraft(hoop, layout, sequence, division, placed.Corners, placed.Settings, joins);
}
