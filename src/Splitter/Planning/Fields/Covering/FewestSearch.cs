using System.Collections.Immutable;

namespace Splitter.Planning.Fields.Covering;

/// <summary>The smallest covers that a search found, all of the same size and linked.</summary>
/// <param name="Covers">The one that promises to fit best first; empty when there is none.</param>
/// <param name="LowerBound">No plan has fewer fields, not even one that a person lays.</param>
internal sealed record FewestAnswer(ImmutableArray<ImmutableArray<Field>> Covers, int LowerBound);

/// <summary>
/// Looks for the fewest fields that cover the drawing and reach each other: a local search over places flush with the
/// drawing and with each other, and a lower bound that does not depend on those places. Among covers of the same size
/// it goes on to look for those that fit better.
/// </summary>
internal static class FewestSearch
{
    /// <summary>
    /// Places flush with drawn things along one axis, in the rounds one after the other. Few lead to small covers; many
    /// lead to more covers as small, and which of them has room for good seams is a matter of luck.
    /// </summary>
    private static readonly ImmutableArray<int> Features = [8, 24, 48];

    /// <summary>
    /// Entries of the table that a round may look at for smaller covers, and as many for others of the same size: about
    /// a tenth of a second each.
    /// </summary>
    private const long MostWork = 100_000_000;

    /// <summary>Demands for links that a round adds: each one that turns out needless narrows the search.</summary>
    private const int MostDemands = 40;

    /// <summary>Covers of the same size that are kept for the choice of the best.</summary>
    private const int MostKept = 32;

    /// <summary>
    /// Covers with more fields are not looked at as a whole: the table grows with the square of their number.
    /// </summary>
    private const int MostAtOnce = 60;

    /// <summary>Stands for the size of a cover where none is known; recipes hold no more fields.</summary>
    private const int MostFields = 10_000;

    /// <param name="jobs">How many threads may work.</param>
    internal static FewestAnswer Find(CoverTask task, int jobs = 1)
    {
        var misfits = new Misfits(task, new CoverGrid(task, []));
        var found = new Shortlist(misfits.Sum, MostKept);
        if (task.Fixed.IsEmpty && task.Forbidden.IsEmpty)
            foreach (var cover in Shelves.Covers(task, jobs))
                if (Linked(task, cover) is { } linked)
                    found.Add(linked);
        if (found.Size == 1)
            return new(found.Covers, 1);
        // Of covers whose seams have room: no other is looked for.
        var points = new PointBound(task);
        var bound = points.Of(found.Size ?? MostFields, 0, jobs);
        if (found.Size > MostAtOnce)
            return new(found.Covers, LowerBound.Of(task, found.Size.Value, points, jobs));
        var edges = new DrawnEdges(task);
        int? bounded = null;
        foreach (var features in Features)
        {
            var candidates = Candidates.For(task, edges, features, found.Covers is [var best, ..] ? best : [], jobs);
            var table = candidates.Table;
            if (Enumerable.Range(0, table.Rows).Any(r => table.SetsOf(r).Length == 0))
                break;
            var met = 0;
            if (!(bound >= found.Size))
            {
                met = Search(task, candidates, bound, MostWork, found);
                // Only for a smaller cover than before could another bound be found.
                if (bounded is null || bounded != found.Size)
                    bound = Math.Max(bound, points.Of(found.Size ?? MostFields, jobs: jobs));
                bounded = found.Size;
            }
            // A search that has met no cover as small would only go the same way again.
            if (found.Size is { } size && met <= size)
                Search(task, candidates, size, MostWork, found);
        }
        return new(found.Covers, LowerBound.Of(task, bound, points, jobs));
    }

    /// <summary>
    /// Looks for covers with ever fewer fields, down to a number, and then for others of that size. Groups that do not
    /// reach each other ask for a field between.
    /// </summary>
    /// <returns>Fields of the smallest cover that it met; 0 once it has asked for more than covers.</returns>
    private static int Search(CoverTask task, Candidates candidates, int fewest, long mostWork, Shortlist found)
    {
        var (demands, smallest) = (0, int.MaxValue);
        new CoverSearch(candidates.Table, candidates.Locked).Run([], fewest - 1, mostWork, Judge);
        return demands > 0 ? 0 : smallest;

        bool Judge(ImmutableArray<int> cover)
        {
            var fields = candidates.Of(cover);
            smallest = Math.Min(smallest, fields.Length);
            if (Links.Groups(fields, task) is not { Count: > 1 } groups)
            {
                found.Add(fields);
                return fields.Length > fewest;
            }
            if (!(fields.Length + 1 >= found.Size) && Linked(task, fields) is { } linked)
                found.Add(linked);
            foreach (var group in groups)
            {
                var reach = Links.Reach(candidates.Fields, [.. group.Select(g => cover[g])], task);
                if (demands == MostDemands || reach.Length == 0)
                    continue;
                candidates.Table.Add(reach);
                demands++;
            }
            return false;
        }
    }

    /// <summary>The fields with as many more as link them; null when that cannot be.</summary>
    private static ImmutableArray<Field>? Linked(CoverTask task, ImmutableArray<Field> fields)
    {
        var bridged = task.Rules is null ? fields : Bridges.Added(fields, task);
        return bridged.Any(task.Forbids) || Links.Groups(bridged, task).Count > 1 ? null : bridged;
    }
}
