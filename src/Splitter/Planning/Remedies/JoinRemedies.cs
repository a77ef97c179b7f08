using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes;
using static System.FormattableString;

namespace Splitter.Planning.Remedies;

/// <summary>
/// For joins whose misfit their overlap does not cover, the first change that would make it so. Each change is planned,
/// not guessed, and told once with all joins that it mends; none is planned for joins that an earlier one has mended.
/// </summary>
internal static class JoinRemedies
{
    /// <param name="fits">
    /// A width that all joins have room for, where the one of the recipe is too wide for some.
    /// </param>
    internal static IEnumerable<Diagnostic> Warnings(Redrafts redrafts, int? fits)
    {
        // MaxBy and OrderBy keep the order of joins among equals.
        ImmutableArray<PartJoin> open =
        [
            .. redrafts.Draft.Joins.Where(join => !join.IsCovered).OrderByDescending(Outcome.RatioOf),
        ];
        if (open.IsEmpty)
            yield break;
        var tried = new List<Outcome>();
        foreach (var change in Change.All(redrafts, fits))
        {
            if (change.Planned() is not { } planned)
                continue;
            var outcome = new Outcome(change, redrafts.Draft, planned);
            tried.Add(outcome);
            ImmutableArray<PartJoin> mended = [.. open.Where(outcome.Mends)];
            if (mended.IsEmpty)
                continue;
            yield return Warning(redrafts, mended, $"{change.Text}: planned so, {outcome.Figures(mended)}", change.Key);
            open = open.RemoveRange(mended);
            if (open.IsEmpty)
                yield break;
        }
        yield return Warning(redrafts, open, Unmended(redrafts.Recipe, tried, open), "overlap.width");
    }

    private static string Unmended(Recipe recipe, List<Outcome> tried, ImmutableArray<PartJoin> open)
    {
        if (tried.MinBy(outcome => outcome.Ratio(open)) is not { } best)
            return $"no change of the recipe could be planned; {Else(recipe)}";
        var changes = tried.Count == 1 ? "1 change that was" : Invariant($"{tried.Count} changes that were");
        return best.Ratio(open) < Outcome.RatioOf(open[0])
            ? $"of {changes} planned none mends {(open.Length == 1 ? "this join" : "all of these")}, best is "
                + $"'{best.Change.Text}', where {best.Figures(open)}; {Else(recipe)}"
            : $"of {changes} planned none makes it better; {Else(recipe)}";
    }

    /// <summary>What no change of the recipe can do, and so is not planned.</summary>
    private static string Else(Recipe recipe)
    {
        var cloth = recipe.Cloth.Stretch.IsNone
            ? ""
            : ", back the cloth so that it gives less than 'cloth.stretch' says";
        var fields = recipe.Fields.Place is FewestFields ? "" : ", place fields so that they share more ground";
        return $"set corners more closely than 'registration.accuracy' says{cloth}{fields}, or hide the join under a "
            + "motif";
    }

    private static Diagnostic Warning(Redrafts redrafts, ImmutableArray<PartJoin> joins, string advice, string key) =>
        PlanProblems.FitExceedsOverlap(
            redrafts.Recipe.PlaceOf(key, "overlap.width", "registration"),
            joins,
            advice,
            redrafts.Draft.Hoop
        );
}
