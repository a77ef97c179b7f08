using System.Collections.Immutable;

namespace Splitter.Planning.Fields.Covering;

/// <summary>The smallest covers that a search found, all of the same size and linked.</summary>
/// <param name="Covers">In the order in which they were found.</param>
/// <param name="LowerBound">No cover has fewer fields.</param>
internal sealed record FewestAnswer(ImmutableArray<ImmutableArray<Field>> Covers, int LowerBound);

/// <summary>
/// Looks for the fewest fields that cover the drawing and reach each other: a local search over places flush with the
/// drawing and with each other, and a lower bound that does not depend on those places.
/// </summary>
internal static class FewestSearch
{
    /// <summary>Places flush with drawn things along one axis, in the rounds one after the other.</summary>
    private static readonly ImmutableArray<int> Features = [8, 24];

    /// <summary>Entries of the table that a round may look at: about a second in all.</summary>
    private const long MostWork = 150_000_000;

    /// <summary>Demands for links that a round adds: each one that turns out needless narrows the search.</summary>
    private const int MostDemands = 40;

    /// <summary>Covers of the same size that are kept for the choice of the best.</summary>
    private const int MostKept = 12;

    /// <param name="known">A cover that is known, reachable throughout: the answer is never larger.</param>
    internal static FewestAnswer Find(CoverTask task, ImmutableArray<Field> known)
    {
        var found = new List<ImmutableArray<Field>> { known };
        var bound = PointBound.Of(task, known.Length);
        foreach (var features in Features)
        {
            if (bound >= found[0].Length && found.Count > 1)
                break;
            Round(task, Candidates.For(task, features, found[^1]), bound, found);
        }
        return new([.. found], bound);
    }

    private static void Round(CoverTask task, Candidates candidates, int bound, List<ImmutableArray<Field>> found)
    {
        var table = candidates.Table;
        if (Enumerable.Range(0, table.Rows).Any(r => table.SetsOf(r).Length == 0))
            return;
        var search = new CoverSearch(table, candidates.Locked);
        var demands = 0;
        search.Run(
            [],
            bound,
            MostWork,
            cover =>
            {
                ImmutableArray<Field> fields = [.. cover.Select(i => candidates.Fields[i])];
                if (task.Rules is not { } rules)
                {
                    Keep(fields);
                    return true;
                }
                var groups = Links.Groups(fields, rules);
                if (groups.Count == 1)
                {
                    Keep(fields);
                    return true;
                }
                if (task.Forbidden.IsEmpty && fields.Length + 1 < found[0].Length)
                    Keep(Bridges.Added(fields, rules, task.Template));
                foreach (var group in groups)
                {
                    if (demands >= MostDemands)
                        break;
                    var reach = Links.Reach(candidates.Fields, [.. group.Select(g => cover[g])], rules);
                    if (reach.Length == 0)
                        continue;
                    table.Add(reach);
                    demands++;
                }
                return false;
            }
        );

        void Keep(ImmutableArray<Field> fields)
        {
            if (fields.Length < found[0].Length)
                found.Clear();
            if (found.Count == 0 || (fields.Length == found[0].Length && found.Count < MostKept))
                found.Add(fields);
        }
    }
}
