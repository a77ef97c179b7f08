using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Planning.Fields;

namespace Splitter.Planning.Drafting;

/// <summary>
/// Chooses among drafts with as many fields: first by how much they cut that wants to stay whole, then by what their
/// seams show, then by how many hoopings are hardly worth it, and then by how well parts meet.
/// </summary>
internal static class DraftChoice
{
    /// <summary>
    /// Seam costs that differ by less than this share of the lowest count as equal: prices of seams are judgements, no
    /// better known than that, and no eye sees one centimetre more in half a metre of seam.
    /// </summary>
    private const double AsGood = 0.02;

    /// <summary>
    /// Layouts that are drafted at most, all together within one <see cref="DraftBudget"/>. Of layouts that promise as
    /// much, one may show a fifth less than the next.
    /// </summary>
    private const int MostTried = 8;

    /// <summary>Drafts whose fields are moved to where seams show less: two or three seconds each.</summary>
    private const int MostRefined = 2;

    /// <summary>The layouts to draft: the first one, and more of them for small drawings.</summary>
    internal static ImmutableArray<Layout> Tried(Drawing drawing, ImmutableArray<Layout> layouts) =>
        [.. layouts.Take(DraftBudget.Drafts(drawing, layouts[0], MostTried))];

    /// <summary>A large drawing is drafted once.</summary>
    internal static bool CanDraftMore(Drawing drawing, Layout layout) =>
        DraftBudget.Drafts(drawing, layout, MostTried) > 1;

    /// <summary>The draft to take; without any, what is wrong with the first layout.</summary>
    internal static Result<PlanDraft> Best(Drawing drawing, ImmutableArray<Result<PlanDraft>> drafts)
    {
        ImmutableArray<Result<PlanDraft>> good = [.. drafts.Where(d => d.Succeeded)];
        if (good.IsEmpty)
            return drafts[0];
        var cut = good.Min(d => Cut(d.Value));
        good = good.RemoveAll(d => Cut(d.Value) > cut);
        var least = good.Min(d => Shown(d.Value));
        ImmutableArray<Result<PlanDraft>> asGood = [.. good.Where(d => Shown(d.Value) <= least * (1 + AsGood))];
        return asGood is [var one]
            ? one
            : asGood.MinBy(d => (Yields.Little(drawing, d.Value.Division), WorstFit(d.Value)))!;

        int Cut(PlanDraft draft) => WantedWhole.Cut(drawing, draft.Layout).Count;
    }

    /// <summary>Those that are worth a closer look: their seams show least.</summary>
    internal static ImmutableArray<Result<PlanDraft>> Least(ImmutableArray<Result<PlanDraft>> drafts) =>
        [.. drafts.Where(d => d.Succeeded).OrderBy(d => Shown(d.Value)).Take(MostRefined)];

    private static double Shown(PlanDraft draft) => draft.Division.Cost.Cost;

    private static double WorstFit(PlanDraft draft) =>
        draft.Joins.Select(j => j.PredictedError).DefaultIfEmpty(0).Max();
}
