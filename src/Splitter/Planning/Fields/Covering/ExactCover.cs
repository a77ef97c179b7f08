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
    private readonly long entries;

    /// <summary>What the climbs at the root found, once for all searches.</summary>
    private readonly (int Floor, long[] Prices, long[] Costs, long Work) root;
    private long mostWork;
    private int[]? best;
    private int fewest;
    private int floor;
    private long work;
    private bool stopped;

    /// <param name="below">Only covers with fewer sets are looked for.</param>
    internal ExactCover(CoverTable table, int below)
    {
        (this.table, Below) = (table, below);
        dual = new(table);
        ready = new int[table.Rows];
        entries = 1 + Enumerable.Range(0, table.Rows).Sum(r => (long)table.SetsOf(r).Length);
        root = IsCoverable ? Root() : (below, [], [], 0);
    }

    /// <summary>Only covers with fewer sets are looked for.</summary>
    internal int Below { get; }

    private bool IsCoverable => Enumerable.Range(0, table.Rows).All(r => table.SetsOf(r).Length > 0);

    /// <summary>
    /// A cover with fewer sets than a number, or the proof that there is none, as far as work allows.
    /// </summary>
    /// <param name="mostWork">How many entries of the table may be looked at.</param>
    internal CoverAnswer Solve(long mostWork)
    {
        (this.mostWork, fewest, floor, work, best, stopped) = (mostWork, Below, root.Floor, root.Work, null, false);
        if (floor < fewest)
            Branch(All(table.Rows), All(table.Sets), [], root.Prices, root.Costs, floor);
        return new(best, stopped ? Math.Min(floor, fewest) : fewest);
    }

    private (int Floor, long[] Prices, long[] Costs, long Work) Root()
    {
        var (open, allowed) = (All(table.Rows), All(table.Sets));
        var once = RootRounds * entries;
        var found = (int)Math.Max(table.Rows == 0 ? 0 : 1, dual.Climb(open, allowed, Below, RootRounds, null));
        if (found >= Below)
            return (found, dual.Prices.ToArray(), dual.Costs.ToArray(), once);
        // Longer steps, from the best prices of the short ones, find what those do not.
        var longer = (int)dual.Climb(open, allowed, Below, RootRounds, dual.Prices.ToArray(), LongSteps);
        return (longer, dual.Prices.ToArray(), dual.Costs.ToArray(), 2 * once);
    }

    private static bool[] All(int count)
    {
        var all = new bool[count];
        Array.Fill(all, true);
        return all;
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
            .OrderByDescending(s => Count(table.RowsOf(s), open))
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

    /// <summary>How many of some rows are open.</summary>
    internal static int Count(ReadOnlySpan<int> rows, bool[] open)
    {
        var count = 0;
        foreach (var row in rows)
            if (open[row])
                count++;
        return count;
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
