using Splitter.Geometry;

namespace Splitter.Parts;

/// <summary>
/// Betters an order by turning stretches of it round (2-opt: Croes 1958, from memory) and by moving short ones (Or-opt:
/// Or 1976, from memory); when neither helps, two stretches change places at random and what comes of it stays if it is
/// better. What lies over something stays after it throughout. Chance comes from a generator of its own: same blocks,
/// same order.
/// </summary>
internal sealed class JumpSearch
{
    /// <summary>
    /// Changes that are looked at for each block: enough for small orders to come to rest many times, and bounded for
    /// large ones.
    /// </summary>
    private const long WorkPerBlock = 10_000;

    /// <summary>Longest stretch that is moved.</summary>
    private const int LongestMoved = 3;

    /// <summary>Stretches that change places at random are this long at most: changes stay local.</summary>
    private const int LongestSwapped = 30;

    /// <summary>Gains that rounding of sums makes of nothing, µm.</summary>
    private const double Nothing = 1e-3;

    private readonly NotedOrder order;
    private readonly int count;
    private long work;
    private ulong state = 1_618_033_988;

    /// <param name="start">An order that keeps to what lies over what.</param>
    /// <param name="below">For each piece those that it lies over.</param>
    internal JumpSearch(Stay[] start, int[][] below, Point? needle)
    {
        (order, count) = (new(start, below, needle), start.Length);
        work = WorkPerBlock * count;
    }

    internal IReadOnlyList<Stay> Order => order.Stays;

    internal void Better()
    {
        Descend();
        if (count < 2)
            return;
        var best = (Order: order.Kept(), Cost: order.Total());
        while (work > 0)
        {
            Shake();
            Descend();
            if (order.Total() < best.Cost - Nothing)
                best = (order.Kept(), order.Total());
            else
                order.Restore(best.Order);
            work -= count;
        }
    }

    private void Descend()
    {
        do Note();
        while (BetterOnce() || Begin());
    }

    private void Note()
    {
        work -= count;
        order.Note();
    }

    /// <summary>One sweep of all changes.</summary>
    private bool BetterOnce()
    {
        var bettered = false;
        for (var i = 0; i < count && work > 0; i++)
            while (work > 0 && (TurnFrom(i) || MoveFrom(i)))
            {
                bettered = true;
                Note();
            }
        return bettered;
    }

    private bool TurnFrom(int i)
    {
        for (var j = i; j < count; j++)
        {
            work--;
            if (j > i && order.LastBelow(j) >= i)
                return false;
            var gain = order.Jump(i) + order.Jump(j + 1) + order.Stretch(i, j) - order.Turned(i, j);
            gain -=
                JumpEnd.Cost(order.Before(i), order.EntryTurned(j))
                + JumpEnd.Cost(order.ExitTurned(i), order.Entry(j + 1));
            if (gain <= Nothing)
                continue;
            order.Turn(i, j);
            return true;
        }
        return false;
    }

    private bool MoveFrom(int i)
    {
        for (var j = i; j < Math.Min(count, i + LongestMoved); j++)
        {
            var (earliest, latest) = (0, count - 1);
            // A block that has one right way is the same turned round.
            var turns = j > i || order[i].Turns;
            for (var k = i; k <= j; k++)
            {
                var (last, first) = (order.LastBelow(k), order.FirstAbove(k));
                // What lies over something that is moved along may lie over more outside: it does not go that way.
                earliest = Math.Max(earliest, Math.Min(i, last + 1));
                latest = Math.Min(latest, Math.Max(j, first - 1));
                turns &= last < i;
            }
            var freed = order.Jump(i) + order.Jump(j + 1) - JumpEnd.Cost(order.Before(i), order.Entry(j + 1));
            if (freed <= Nothing)
                continue;
            var (entry, exit) = (order.Entry(i), order.Before(j + 1));
            var (entryTurned, exitTurned) = (order.EntryTurned(j), order.ExitTurned(i));
            var (within, withinTurned) = (order.Stretch(i, j), order.Turned(i, j));
            for (var at = earliest; at <= latest + 1; at++)
            {
                if (at >= i && at <= j + 1)
                    continue;
                work--;
                // Between what is at - 1 and at now.
                var (before, after) = (order.Before(at), order.Entry(at));
                var parted = freed + order.Jump(at);
                if (
                    JumpEnd.AreDear(before, entry, exit, after, parted)
                    && (
                        !turns
                        || JumpEnd.AreDear(before, entryTurned, exitTurned, after, parted + within - withinTurned)
                    )
                )
                    continue;
                var kept = JumpEnd.Cost(before, entry) + JumpEnd.Cost(exit, after);
                var turned = turns
                    ? JumpEnd.Cost(before, entryTurned) + JumpEnd.Cost(exitTurned, after) + withinTurned - within
                    : double.PositiveInfinity;
                if (parted - Math.Min(kept, turned) <= Nothing)
                    continue;
                if (turned < kept)
                    order.Turn(i, j);
                order.Swap(Math.Min(i, at), at < i ? i : j + 1, Math.Max(j + 1, at));
                return true;
            }
        }
        return false;
    }

    /// <summary>Every loop begins where both its jumps are least.</summary>
    private bool Begin()
    {
        var before = order.Total();
        for (var i = 0; i < count; i++)
            if (order[i].IsLoop)
                order[i].BeginBetween(order.ExitAt(i - 1), order.EntryAt(i + 1));
        return order.Total() < before - Nothing;
    }

    /// <summary>Two stretches at random change places, and their loops begin anywhere.</summary>
    private void Shake()
    {
        var a = Below(count - 1);
        var b = a + 1 + Below(Math.Min(LongestSwapped, count - 1 - a));
        var c = b + 1 + Below(Math.Min(LongestSwapped, count - b));
        if (Enumerable.Range(b, c - b).All(k => order.LastBelow(k, b) < a))
            order.Swap(a, b, c);
        for (var i = a; i < c; i++)
            order[i].Way = (order[i].Way.Turned, Below(order[i].Holes));
    }

    /// <summary>A number below a bound (xorshift64*, Marsaglia 2003 and Vigna 2016, from memory).</summary>
    private int Below(int bound)
    {
        state ^= state >> 12;
        state ^= state << 25;
        state ^= state >> 27;
        return (int)((state * 2685821657736338717UL >> 33) % (ulong)bound);
    }
}
