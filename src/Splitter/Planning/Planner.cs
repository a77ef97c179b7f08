using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Planning.Drafting;
using Splitter.Planning.Fields;
using Splitter.Planning.Marks;
using Splitter.Planning.Remedies;
using Splitter.Recipes;

namespace Splitter.Planning;

/// <summary>
/// Drawing and hoop to <see cref="Plan"/>: a draft, what it is sewn with, and what would help where it fits badly.
/// </summary>
internal static class Planner
{
    internal static Result<Plan> Plan(Drafts drafts, Hoop hoop) =>
        from draft in drafts.Of(hoop)
        let recipe = drafts.For(hoop)
        from plan in Result.From(
            Finished(recipe, drafts.Drawing, draft),
            [
                .. YieldRemarks.Of(recipe, drafts.Drawing, draft),
                .. WantedWhole.Warnings(recipe, drafts.Drawing, draft.Layout),
                .. Remedied(new(drafts, draft)),
                .. ClothEdge.Warnings(recipe, draft.Layout.Fields),
            ]
        )
        select plan;

    /// <summary>
    /// A width that serves all joins is the first advice for each of them: two widths would contradict each other.
    /// </summary>
    private static IEnumerable<Diagnostic> Remedied(Redrafts redrafts)
    {
        var fits = WidthRemedy.Fitting(redrafts);
        return WidthRemedy.Warnings(redrafts, fits).Concat(JoinRemedies.Warnings(redrafts, fits));
    }

    private static Plan Finished(Recipe recipe, Drawing drawing, PlanDraft draft)
    {
        var (hoop, layout, _, division, corners, settings, joins) = draft;
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
                            Setting = settings[i],
                            Takes = Indexes(corners, c => c.Receivers.Contains(i)),
                            Gives = Indexes(corners, c => c.Donor == i),
                            Alignments = AlignmentPlacer.Place(recipe, drawing, layout, division, corners, i),
                        }
                ),
            ],
            LowerBound = Held(layout),
            IsPlacedByHand = recipe.Fields.Place is not FewestFields,
            Owners = division.Owners,
            SeamLines = division.Seams,
            TurnedLayers = division.Turned,
            Joins = joins,
            Corners = corners,
            PlacementLines = Folds.LinesIn(recipe.Cloth, layout.Fields[0]),
            Seams = division.Cost,
        };
    }

    /// <summary>The bound, which this plan itself keeps; else it is none.</summary>
    private static int Held(Layout layout) =>
        layout.LowerBound <= layout.Fields.Length
            ? layout.LowerBound
            : throw new InvalidOperationException(
                $"A bound of {layout.LowerBound} fields is wrong: a plan has {layout.Fields.Length}."
            );

    private static ImmutableArray<int> Indexes(ImmutableArray<Corner> corners, Func<Corner, bool> belongs) =>
        [.. Enumerable.Range(0, corners.Length).Where(i => belongs(corners[i]))];
}
