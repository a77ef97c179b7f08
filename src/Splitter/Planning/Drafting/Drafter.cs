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
/// Drawing and hoop to a draft. Fields are laid first; straight seams show roughly where they will meet, enough to put them
/// into sewing order; knowing that order, seams divide the drawing where it shows least (what is sewn last may hide one);
/// corners let each hooping find the last, and from them follows how well they will meet.
/// </summary>
internal static class Drafter
{
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
        let fit = new PredictedFit(recipe, layout.Fields.Length, corners)
        from joins in JoinPlanner.Plan(recipe, layout, division, fit)
        select new PlanDraft(hoop, layout, sequence, division, corners, joins);
}
