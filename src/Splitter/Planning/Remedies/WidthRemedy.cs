using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Planning.Drafting;

namespace Splitter.Planning.Remedies;

/// <summary>For an overlap that some joins have no room for, one width that serves all of them.</summary>
internal static class WidthRemedy
{
    /// <summary>Widths that are planned: with a smaller one seams move, and may leave less room than before.</summary>
    private const int MostTried = 3;

    /// <param name="fits">What <see cref="Fitting"/> has found.</param>
    internal static IEnumerable<Diagnostic> Warnings(Redrafts redrafts, int? fits)
    {
        var tight = Tight(redrafts.Draft, redrafts.Recipe.Overlap.Width);
        if (!tight.IsEmpty)
            yield return PlanProblems.OverlapTooWide(
                redrafts.Recipe.PlaceOf("overlap.width"),
                tight,
                fits,
                redrafts.Draft.Hoop
            );
    }

    /// <summary>Joins that get less than the recipe asks for, those that get least first.</summary>
    internal static ImmutableArray<PartJoin> Tight(PlanDraft draft, int? width) =>
        [.. draft.Joins.Where(join => join.Overlap < width).OrderBy(join => join.Overlap)];

    /// <summary>
    /// All joins have room for this and are covered by it; null when none is needed, or no such width was found.
    /// </summary>
    internal static int? Fitting(Redrafts redrafts)
    {
        var tight = Tight(redrafts.Draft, redrafts.Recipe.Overlap.Width);
        for (var i = 0; i < MostTried && !tight.IsEmpty; i++)
        {
            var width = tight[0].Overlap / Change.WidthStep * Change.WidthStep;
            if (redrafts.Of(Change.WithWidth(redrafts.Recipe, width)) is not { } planned)
                return null;
            tight = Tight(planned, width);
            if (tight.IsEmpty)
                return planned.Joins.All(join => join.IsCovered) ? width : null;
        }
        return null;
    }
}
