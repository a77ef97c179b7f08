namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// A lower bound on set cover from Lagrangian relaxation: every row has a price, a set may cost one unit, and what the
/// rows pay in all, less what they pay too much to single sets, no cover can undercut. Prices are whole shares of a
/// unit, so that the bound is exact whatever prices the subgradient steps arrive at (Held and Karp 1971, from memory).
/// </summary>
internal sealed class DualBound(CoverTable table)
{
    /// <summary>One set's cost in shares; fine enough that rounding prices costs nothing to speak of.</summary>
    internal const long Unit = 1 << 20;

    /// <summary>First step of the subgradient, as a share of the gap; the value that is common for set cover.</summary>
    private const double FirstStep = 1.0;

    /// <summary>Rounds without a better bound before the step is halved.</summary>
    private const int Patience = 8;

    private readonly long[] left = new long[table.Sets];
    private readonly int[] covered = new int[table.Rows];

    /// <summary>Prices of the best bound found.</summary>
    internal long[] Prices { get; } = new long[table.Rows];

    /// <summary>
    /// What each allowed set costs beyond what its rows pay, at the best prices; negative when they pay more.
    /// </summary>
    internal long[] Costs { get; } = new long[table.Sets];

    /// <summary>
    /// The least number of allowed sets that cover the open rows, bounded from below. Stops as soon as the bound
    /// reaches what is asked for.
    /// </summary>
    /// <param name="open">Rows still to be covered.</param>
    /// <param name="allowed">Sets that may be used.</param>
    /// <param name="enough">A bound this high is as good as any.</param>
    /// <param name="steps">How many times as long as usual the first steps are.</param>
    /// <param name="start">Prices to start with; null for an even share.</param>
    internal long Climb(bool[] open, bool[] allowed, int enough, int rounds, long[]? start, int steps = 1)
    {
        var prices = new long[table.Rows];
        for (var row = 0; row < prices.Length; row++)
            if (open[row])
                prices[row] = start is null ? Unit / LargestSet(row, open, allowed) : start[row];
        var (best, step, idle) = (long.MinValue, FirstStep * steps, 0);
        for (var round = 0; ; round++)
        {
            var value = Value(prices, allowed);
            if (value > best)
            {
                (best, idle) = (value, 0);
                prices.CopyTo(Prices, 0);
                left.CopyTo(Costs, 0);
            }
            else if (++idle == Patience)
            {
                (step, idle) = (step / 2, 0);
            }
            if (round == rounds || best > (enough - 1) * Unit)
                return (best + Unit - 1) / Unit;
            long norm = 0;
            for (var row = 0; row < prices.Length; row++)
                if (open[row])
                    norm += (long)(1 - covered[row]) * (1 - covered[row]);
            if (norm == 0)
                return (best + Unit - 1) / Unit;
            var length = step * Math.Max(Unit / 2, ((long)enough * Unit) - value) / norm;
            for (var row = 0; row < prices.Length; row++)
                if (open[row])
                    prices[row] = Math.Max(0, prices[row] + (long)Math.Round(length * (1 - covered[row])));
        }
    }

    /// <param name="prices">Nothing where a row is not open.</param>
    private long Value(long[] prices, bool[] allowed)
    {
        long value = 0;
        Array.Clear(covered);
        foreach (var price in prices)
            value += price;
        for (var set = 0; set < allowed.Length; set++)
        {
            if (!allowed[set])
                continue;
            var rest = Unit;
            var rows = table.RowsOf(set);
            foreach (var row in rows)
                rest -= prices[row];
            left[set] = rest;
            if (rest >= 0)
                continue;
            value += rest;
            foreach (var row in rows)
                covered[row]++;
        }
        return value;
    }

    private int LargestSet(int row, bool[] open, bool[] allowed)
    {
        var largest = 1;
        foreach (var set in table.SetsOf(row))
            if (allowed[set])
                largest = Math.Max(largest, ExactCover.Count(table.RowsOf(set), open));
        return largest;
    }
}
