using System.Collections.Immutable;
using Splitter.Diagnostics;
using static System.FormattableString;

namespace Splitter.Planning.Remedies;

/// <summary>
/// For joins whose misfit their overlap does not cover, the first change that would make it so. Each change is planned, not
/// guessed, and told once with all joins that it mends; none is planned for joins that an earlier one has mended.
/// </summary>
internal static class JoinRemedies
{
    private const string Else =
        "set corners more closely than 'registration.accuracy' says, or hide the join under a motif";

    internal static IEnumerable<Diagnostic> Warnings(Redrafts redrafts)
    {
        // MaxBy and OrderBy keep the order of joins among equals.
        ImmutableArray<PartJoin> open =
        [
            .. redrafts.Draft.Joins.Where(join => !join.IsCovered).OrderByDescending(Outcome.RatioOf),
        ];
        if (open.IsEmpty)
            yield break;
        var tried = new List<Outcome>();
        foreach (var change in Change.All(redrafts))
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
        yield return Warning(redrafts, open, Unmended(tried, open), "overlap.width");
    }

    private static string Unmended(List<Outcome> tried, ImmutableArray<PartJoin> open) =>
        tried.MinBy(outcome => outcome.Ratio(open)) is { } best
            ? Invariant(
                $"of {tried.Count} {(tried.Count == 1 ? "change that was" : "changes that were")} planned none mends {(open.Length == 1 ? "this join" : "all of these")}, best is '{best.Change.Text}', where {best.Figures(open)}; {Else}"
            )
            : $"no change of the recipe could be planned; {Else}";

    private static Diagnostic Warning(Redrafts redrafts, ImmutableArray<PartJoin> joins, string advice, string key) =>
        PlanProblems.FitExceedsOverlap(
            redrafts.Recipe.PlaceOf(key, "overlap.width", "registration"),
            joins,
            advice,
            redrafts.Draft.Hoop
        );
}
