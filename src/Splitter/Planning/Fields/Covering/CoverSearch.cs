using System.Collections.Immutable;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// Local search for small covers: one set is taken out of a cover, and sets are exchanged until all rows are covered
/// again; rows that stay open gain weight, so that the search does not go in circles (row weighting: Gao, Weise and Li
/// 2015, from memory). Chance comes from a generator of its own with a fixed seed: same table, same answer.
/// </summary>
internal sealed class CoverSearch
{
    /// <summary>What judging a cover counts for, in entries of the table: it is compared field by field.</summary>
    private const long Judging = 100_000;

    /// <summary>
    /// Exchanges of one run. Small tables have few entries to look at in each, and show what they have long before.
    /// </summary>
    private const long MostSteps = 100_000;

    private readonly CoverTable table;
    private readonly bool[] locked;
    private readonly bool[] chosen;
    private readonly long[] score;
    private readonly long[] changed;
    private long[] weight = [];
    private int[] covers = [];

    /// <summary>The exclusive or of the chosen sets that cover a row: where there is one, that one.</summary>
    private int[] cover = [];
    private readonly List<int> open = [];
    private int[] openAt = [];
    private readonly SortedSet<int> taken = [];
    private ulong chance = 0x9E3779B97F4A7C15;
    private long step = 1;
    private long work;

    /// <param name="locked">Sets that belong to every cover.</param>
    internal CoverSearch(CoverTable table, IEnumerable<int> locked)
    {
        this.table = table;
        this.locked = new bool[table.Sets];
        chosen = new bool[table.Sets];
        score = new long[table.Sets];
        changed = new long[table.Sets];
        TakeNewRows();
        foreach (var set in locked)
        {
            this.locked[set] = true;
            if (!chosen[set])
                Flip(set);
        }
    }

    /// <summary>Looks for ever smaller covers.</summary>
    /// <param name="start">A cover to begin with; what it leaves open is added greedily.</param>
    /// <param name="enough">Covers of this size are not improved on.</param>
    /// <param name="mostWork">How many entries of the table may be looked at.</param>
    /// <param name="accept">
    /// Judges a cover: true lets the search go on to smaller ones, false to others of the same size; rows may have been
    /// added to the table by then which it leaves open.
    /// </param>
    internal void Run(IEnumerable<int> start, int enough, long mostWork, Func<ImmutableArray<int>, bool> accept)
    {
        foreach (var set in start)
            if (!chosen[set])
                Flip(set);
        while (open.Count > 0)
            Flip(Best(table.SetsOf(open[0])));
        work = 0;
        var tabu = -1;
        while (work < mostWork && step < MostSteps)
        {
            step++;
            if (open.Count == 0)
            {
                while (Spare() is { } spare)
                    Flip(spare);
                work += Judging;
                var accepted = accept([.. taken]);
                if (accepted && taken.Count <= enough)
                    return;
                TakeNewRows();
                if (accepted)
                {
                    if (Leaving(-1) is not { } first)
                        return;
                    Flip(first);
                    continue;
                }
            }
            if (Leaving(tabu) is not { } leaving)
                return;
            Flip(leaving);
            // Where nothing is open, a cover is to be passed by, and it had sets to spare for rows added since.
            var row = open.Count == 0 ? Chance(table.Rows) : open[Chance(open.Count)];
            tabu = Best(table.SetsOf(row));
            if (!chosen[tabu])
                Flip(tabu);
            foreach (var still in open)
            {
                weight[still]++;
                work += table.SetsOf(still).Length;
                foreach (var set in table.SetsOf(still))
                    score[set]++;
            }
        }
    }

    /// <summary>A chosen set without which nothing is left open.</summary>
    private int? Spare()
    {
        foreach (var set in taken)
            if (!locked[set] && score[set] == 0)
                return set;
        return null;
    }

    private int? Leaving(int tabu)
    {
        int? leaving = null;
        foreach (var set in taken)
            if (!locked[set] && set != tabu && (leaving is not { } l || Better(set, l)))
                leaving = set;
        return leaving;
    }

    /// <summary>
    /// The set to take in: the most weight, and not what was thrown out a moment ago unless nothing else will do.
    /// </summary>
    private int Best(int[] sets)
    {
        var best = -1;
        foreach (var set in sets)
            if (changed[set] != step && (best < 0 || Better(set, best)))
                best = set;
        return best < 0 ? sets[0] : best;
    }

    private bool Better(int set, int than) =>
        score[set] != score[than] ? score[set] > score[than]
        : changed[set] != changed[than] ? changed[set] < changed[than]
        : set < than;

    private void TakeNewRows()
    {
        var known = weight.Length;
        Array.Resize(ref weight, table.Rows);
        Array.Resize(ref covers, table.Rows);
        Array.Resize(ref cover, table.Rows);
        Array.Resize(ref openAt, table.Rows);
        for (var row = known; row < table.Rows; row++)
        {
            weight[row] = 1;
            openAt[row] = -1;
            foreach (var set in table.SetsOf(row))
            {
                if (!chosen[set])
                    continue;
                covers[row]++;
                cover[row] ^= set;
            }
            if (covers[row] == 0)
            {
                Open(row);
                foreach (var set in table.SetsOf(row))
                    score[set]++;
            }
            else if (covers[row] == 1)
            {
                score[cover[row]]--;
            }
        }
    }

    private void Flip(int set)
    {
        var takes = !chosen[set];
        chosen[set] = takes;
        changed[set] = step;
        score[set] = -score[set];
        if (takes)
            taken.Add(set);
        else
            taken.Remove(set);
        foreach (var row in table.RowsOf(set))
        {
            if (row >= weight.Length)
                break;
            work++;
            var before = covers[row];
            covers[row] = before + (takes ? 1 : -1);
            if (takes ? before == 1 : before == 2)
            {
                // The other set covers the row alone no longer, or from now on.
                var other = takes ? cover[row] : cover[row] ^ set;
                score[other] += takes ? weight[row] : -weight[row];
            }
            cover[row] ^= set;
            if (takes ? before != 0 : before != 1)
                continue;
            var (sets, by) = (table.SetsOf(row), takes ? -weight[row] : weight[row]);
            work += sets.Length;
            foreach (var other in sets)
                score[other] += by;
            score[set] -= by;
            if (takes)
                Close(row);
            else
                Open(row);
        }
    }

    private void Open(int row)
    {
        openAt[row] = open.Count;
        open.Add(row);
    }

    private void Close(int row)
    {
        var (at, last) = (openAt[row], open[^1]);
        open[at] = last;
        openAt[last] = at;
        open.RemoveAt(open.Count - 1);
        openAt[row] = -1;
    }

    /// <summary>A number below a bound (xorshift64*, Marsaglia 2003 and Vigna 2016, from memory).</summary>
    private int Chance(int below)
    {
        chance ^= chance >> 12;
        chance ^= chance << 25;
        chance ^= chance >> 27;
        return (int)((chance * 0x2545F4914F6CDD1D >> 33) % (ulong)below);
    }
}
