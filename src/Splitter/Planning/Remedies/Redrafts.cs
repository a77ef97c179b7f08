using Splitter.Artwork;
using Splitter.Planning.Drafting;
using Splitter.Recipes;

namespace Splitter.Planning.Remedies;

/// <summary>
/// Plans as they come out when a person changes the recipe: all of it is planned again, since fields, order and seams
/// know of overlaps and corners, too.
/// </summary>
internal sealed class Redrafts(Drafts drafts, PlanDraft draft)
{
    /// <summary>
    /// So many are planned at most, within one <see cref="DraftBudget"/>; of the largest drawing it is one.
    /// </summary>
    private const int Most = 8;

    private int left = DraftBudget.Drafts(drafts.Drawing, draft.Layout, Most);

    internal Recipe Recipe { get; } = drafts.For(draft.Hoop);

    internal Drawing Drawing => drafts.Drawing;

    /// <summary>What is to be mended.</summary>
    internal PlanDraft Draft => draft;

    /// <summary>
    /// The plan of a changed recipe for the same hoop; null when there is none, or enough work has been done.
    /// </summary>
    internal PlanDraft? Of(Recipe changed) =>
        left-- > 0 && drafts.Of(changed, draft.Hoop).TryGet(out var other) ? other : null;

    /// <summary>
    /// The plan of the same recipe for another of its hoops: whoever plans all hoops makes it anyway.
    /// </summary>
    internal PlanDraft? Of(Hoop hoop) => drafts.Of(hoop).TryGet(out var other) ? other : null;
}
