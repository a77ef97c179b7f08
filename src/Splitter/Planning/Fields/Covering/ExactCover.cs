namespace Splitter.Planning.Fields.Covering;

/// <summary>What an exact search found out.</summary>
/// <param name="Sets">The best cover; null when none with fewer sets than asked for was found.</param>
/// <param name="Bound">No cover has fewer sets.</param>
internal sealed record CoverAnswer(int[]? Sets, int Bound);

/// <summary>
/// Set cover by branch and bound: the row that the fewest sets can cover is covered by each of them in turn, and a
/// branch ends where <see cref="DualBound"/> says that it cannot become better. Bounded by work, never by time.
/// </summary>
internal sealed class ExactCover
{
    /// <summary>Subgradient rounds at the root, where they pay for every node below.</summary>
    private const int RootRounds = 300;

    /// <summary>Subgradient rounds at a node: prices start from those of its parent.</summary>
    private const int NodeRounds = 12;

    /// <summary>How many times as long the steps of the second climb at the root are.</summary>
    private const int LongSteps = 8;

    private readonly CoverTable table;
    private readonly DualBound dual;
    private readonly int[] ready;
    private readonly long mostWork;
    private readonly long entries;
    private int[]? best;
    private int fewest;
    private int floor;
    private long work;
    private bool stopped;

    private ExactCover(CoverTable table, int below, long mostWork)
    {
        this.table = table;
        this.mostWork = mostWork;
        dual = new(table);
        fewest = below;
        ready = new int[table.Rows];
        entries = 1 + Enumerable.Range(0, table.Rows).Sum(r => (long)table.SetsOf(r).Length);
    }

    /// <summary>
    /// A cover with fewer sets than a number, or the proof that there is none, as far as work allows.
    /// </summary>
    /// <param name="below">Only covers with fewer sets are looked for.</param>
    /// <param name="mostWork">How many entries of the table may be looked at.</param>
    internal static CoverAnswer Solve(CoverTable table, int below, long mostWork)
    {
        if (Enumerable.Range(0, table.Rows).Any(r => table.SetsOf(r).Length == 0))
            return new(null, below);
        var search = new ExactCover(table, below, mostWork);
        return search.Run();
    }

    private CoverAnswer Run()
    {
        var (open, allowed) = (new bool[table.Rows], new bool[table.Sets]);
        Array.Fill(open, true);
        Array.Fill(allowed, true);
        work += RootRounds * entries;
        floor = (int)Math.Max(table.Rows == 0 ? 0 : 1, dual.Climb(open, allowed, fewest, RootRounds, null));
        if (floor < fewest)
        {
            // Longer steps find what short ones do not, and the other way round.
            work += RootRounds * entries;
            floor = (int)
                Math.Max(floor, dual.Climb(open, allowed, fewest, RootRounds, dual.Prices.ToArray(), LongSteps));
        }
        if (floor < fewest)
            Branch(open, allowed, [], dual.Prices.ToArray(), dual.Costs.ToArray(), floor);
        return new(best, stopped ? Math.Min(floor, fewest) : fewest);
    }

    private void Branch(bool[] open, bool[] allowed, List<int> chosen, long[] prices, long[] costs, long bound)
    {
        var row = Scarcest(open, allowed);
        if (row < 0)
        {
            (best, fewest) = ([.. chosen], chosen.Count);
            return;
        }
        var choices = table
            .SetsOf(row)
            .Where(s => allowed[s])
            .OrderByDescending(s => table.RowsOf(s).Count(r => open[r]))
            .ThenBy(s => costs[s])
            .ThenBy(s => s)
            .ToList();
        var (nowAllowed, tried) = (allowed.ToArray(), new List<int>());
        foreach (var set in choices)
        {
            if (chosen.Count + 1 >= fewest)
                return;
            if (work > mostWork)
            {
                stopped = true;
                return;
            }
            // What a choice covers no more of than one that has been tried, it covers no better.
            nowAllowed[set] = false;
            if (tried.Exists(t => Within(set, t, open)))
                continue;
            tried.Add(set);
            var stillOpen = open.ToArray();
            foreach (var r in table.RowsOf(set))
                stillOpen[r] = false;
            chosen.Add(set);
            work += NodeRounds * entries / 2;
            if (!stillOpen.Contains(true))
                (best, fewest) = ([.. chosen], chosen.Count);
            else if (chosen.Count + 1 < fewest)
            {
                var below = dual.Climb(stillOpen, nowAllowed, fewest - chosen.Count, NodeRounds, prices);
                if (chosen.Count + below < fewest)
                    Branch(
                        stillOpen,
                        nowAllowed,
                        chosen,
                        dual.Prices.ToArray(),
                        dual.Costs.ToArray(),
                        chosen.Count + below
                    );
            }
            chosen.RemoveAt(chosen.Count - 1);
            if (stopped || fewest <= floor || bound >= fewest)
                return;
        }
    }

    private bool Within(int set, int other, bool[] open)
    {
        foreach (var r in table.RowsOf(other))
            ready[r] = other + 1;
        foreach (var r in table.RowsOf(set))
            if (open[r] && ready[r] != other + 1)
                return false;
        return true;
    }

    private int Scarcest(bool[] open, bool[] allowed)
    {
        var (scarcest, fewestSets) = (-1, int.MaxValue);
        for (var row = 0; row < open.Length; row++)
        {
            if (!open[row])
                continue;
            var count = 0;
            foreach (var set in table.SetsOf(row))
                if (allowed[set] && ++count >= fewestSets)
                    break;
            if (count < fewestSets)
                (scarcest, fewestSets) = (row, count);
        }
        return scarcest;
    }
}
