using System.Collections.Concurrent;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Recipes;

namespace Splitter.Planning.Drafting;

/// <summary>
/// The drafts of one recipe, each hoop's made when it is first asked for and then kept: a hoop is both planned for
/// itself and looked at as a remedy for smaller ones.
/// </summary>
/// <param name="jobs">How many threads may work.</param>
internal sealed class Drafts(Recipe recipe, Drawing drawing, int jobs = 1)
{
    /// <summary>Of two who ask for the same at once, one waits for the other.</summary>
    private readonly ConcurrentDictionary<Hoop, Lazy<Result<PlanDraft>>> made = [];

    internal Drawing Drawing { get; } = drawing;

    /// <summary>The recipe with its cloth as it is for a hoop.</summary>
    internal Recipe For(Hoop hoop) => OnCloth.For(recipe, Drawing, hoop);

    internal Result<PlanDraft> Of(Hoop hoop) => made.GetOrAdd(hoop, key => new(() => Of(For(key), key))).Value;

    /// <summary>The draft of a changed recipe, which is not kept.</summary>
    internal Result<PlanDraft> Of(Recipe changed, Hoop hoop) => Drafter.Draft(changed, Drawing, hoop, jobs);
}
