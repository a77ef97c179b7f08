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
    private const long MostWork = 100_000_000;

    /// <summary>Demands for links that a round adds: each one that turns out needless narrows the search.</summary>
    private const int MostDemands = 40;

    /// <summary>Covers of the same size that are kept for the choice of the best.</summary>
    private const int MostKept = 16;

    /// <summary>Stands for the size of a cover where none is known; recipes hold no more fields.</summary>
    private const int MostFields = 10_000;

    /// <param name="known">
    /// A cover that is known, reachable throughout: the answer is never larger. Null when none is: then the answer may be
    /// none as well.
    /// </param>
    internal static FewestAnswer Find(CoverTask task, ImmutableArray<Field>? known)
    {
        var found = new List<ImmutableArray<Field>>();
        if (known is { } start)
            found.Add(start);
        var bound = PointBound.Of(task, Fewest(found), 0);
        foreach (var features in Features)
        {
            var candidates = Candidates.For(task, features, found is [.., var last] ? last : []);
            var table = candidates.Table;
            if (Enumerable.Range(0, table.Rows).Any(r => table.SetsOf(r).Length == 0))
                break;
            if (bound < Fewest(found))
            {
                Smaller(task, candidates, bound, found);
                bound = Math.Max(bound, PointBound.Of(task, Fewest(found), PointBound.MostWork));
            }
            if (found.Count == 0)
                continue;
            Others(task, candidates, found);
            if (bound >= Fewest(found) && found.Count == MostKept)
                break;
        }
        return new([.. found], bound);
    }

    private static int Fewest(List<ImmutableArray<Field>> found) => found.Count == 0 ? MostFields : found[0].Length;

    /// <summary>Looks for covers with ever fewer fields. Groups that do not reach each other ask for a field between.</summary>
    private static void Smaller(CoverTask task, Candidates candidates, int bound, List<ImmutableArray<Field>> found)
    {
        var demands = 0;
        new CoverSearch(candidates.Table, candidates.Locked).Run([], bound, MostWork, Judge);

        bool Judge(ImmutableArray<int> cover)
        {
            var fields = candidates.Of(cover);
            if (task.Rules is not { } rules || Links.Groups(fields, rules) is not { Count: > 1 } groups)
            {
                Keep(fields, found);
                return true;
            }
            if (fields.Length + 1 < Fewest(found))
            {
                var bridged = Bridges.Added(fields, rules, task.Template);
                if (!bridged.Any(task.Forbids))
                    Keep(bridged, found);
            }
            foreach (var group in groups)
            {
                var reach = Links.Reach(candidates.Fields, [.. group.Select(g => cover[g])], rules);
                if (demands == MostDemands || reach.Length == 0)
                    continue;
                candidates.Table.Add(reach);
                demands++;
            }
            return false;
        }
    }

    /// <summary>Collects covers with as many fields as the smallest one.</summary>
    private static void Others(CoverTask task, Candidates candidates, List<ImmutableArray<Field>> found) =>
        new CoverSearch(candidates.Table, candidates.Locked).Run(
            [],
            found[0].Length,
            MostWork / 4,
            cover =>
            {
                if (cover.Length > found[0].Length)
                    return true;
                var fields = candidates.Of(cover);
                if (task.Rules is not { } rules || Links.Groups(fields, rules).Count == 1)
                    Keep(fields, found);
                return found.Count == MostKept;
            }
        );

    private static void Keep(ImmutableArray<Field> fields, List<ImmutableArray<Field>> found)
    {
        if (fields.Length < Fewest(found))
            found.Clear();
        if (found.Count == 0)
            found.Add(fields);
        else if (
            fields.Length == found[0].Length
            && found.Count < MostKept
            && !found.Exists(f => f.SequenceEqual(fields))
        )
            found.Add(fields);
    }
}
