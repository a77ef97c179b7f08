using Splitter.Geometry;

namespace Splitter.Parts;

/// <summary>
/// Betters an order by turning stretches of it round (2-opt: Croes 1958, from memory) and by moving short ones (Or-opt: Or
/// 1976, from memory); when neither helps, two stretches change
/// places at random and what comes of it stays if it is better.
/// What lies over something stays after it throughout. Chance comes from a generator of its own: same blocks, same order.
/// </summary>
internal sealed class JumpSearch
{
    /// <summary>Changes that are looked at for each block: enough for small orders to come to
    /// rest many times, and bounded for large ones.</summary>
    private const long WorkPerBlock = 10_000;

    /// <summary>Longest stretch that is moved.</summary>
    private const int LongestMoved = 3;

    /// <summary>Stretches that change places at random are this long at most: changes stay local.</summary>
    private const int LongestSwapped = 30;

    /// <summary>Gains that rounding of sums makes of nothing, µm.</summary>
    private const double Nothing = 1e-3;

    private readonly List<int>[] below;
    private readonly List<int>[] above;
    private readonly Point? needle;
    private readonly int count;

    // Sums of jumps up to each place, as they are and as they would be if everything were turned round.
    private readonly double[] there;
    private readonly double[] back;
    private readonly int[] firstOf;
    private readonly int[] lastOf;

    // For each place the last place of what its block lies over, and the first of what lies over it.
    private readonly int[] lastBelow;
    private readonly int[] firstAbove;
    private Stay[] order;
    private long work;
    private ulong state = 1_618_033_988;

    /// <param name="start">An order that keeps to what lies over what.</param>
    /// <param name="below">For each piece those that it lies over.</param>
    internal JumpSearch(Stay[] start, List<int>[] below, Point? needle)
    {
        (order, this.below, this.needle, count) = (start, below, needle, start.Length);
        (there, back) = (new double[count + 1], new double[count + 1]);
        (firstOf, lastOf) = (new int[below.Length], new int[below.Length]);
        (lastBelow, firstAbove) = (new int[count], new int[count]);
        above = [.. below.Select(_ => new List<int>())];
        for (var i = 0; i < below.Length; i++)
            foreach (var j in below[i])
                above[j].Add(i);
        work = WorkPerBlock * count;
    }

    internal IReadOnlyList<Stay> Order => order;

    internal void Better()
    {
        Descend();
        if (count < 2)
            return;
        var best = (Order: order.ToArray(), Ways: order.Select(s => s.Way).ToArray(), Cost: Total());
        while (work > 0)
        {
            Shake();
            Descend();
            if (Total() < best.Cost - Nothing)
                best = ([.. order], [.. order.Select(s => s.Way)], Total());
            else
            {
                order = [.. best.Order];
                for (var i = 0; i < count; i++)
                    order[i].Way = best.Ways[i];
            }
            work -= count;
        }
    }

    private void Descend()
    {
        do Note();
        while (BetterOnce() || Begin());
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
            if (j > i && lastBelow[j] >= i)
                return false;
            var gain = Jump(i - 1, i) + Jump(j, j + 1) + Stretch(i, j) - Turned(i, j);
            gain -= Between(ExitAt(i - 1), EntryTurned(j)) + Between(ExitTurned(i), EntryAt(j + 1));
            if (gain <= Nothing)
                continue;
            Turn(i, j);
            return true;
        }
        return false;
    }

    private bool MoveFrom(int i)
    {
        for (var j = i; j < Math.Min(count, i + LongestMoved); j++)
        {
            var (earliest, latest) = (0, count - 1);
            var turns = true;
            for (var k = i; k <= j; k++)
            {
                var (last, first) = (lastBelow[k], firstAbove[k]);
                // What lies over something that is moved along may lie over more outside: it does not go that way.
                earliest = Math.Max(earliest, Math.Min(i, last + 1));
                latest = Math.Min(latest, Math.Max(j, first - 1));
                turns &= last < i;
            }
            var freed = Jump(i - 1, i) + Jump(j, j + 1) - Between(ExitAt(i - 1), EntryAt(j + 1));
            if (freed <= Nothing)
                continue;
            for (var at = earliest; at <= latest + 1; at++)
            {
                if (at >= i && at <= j + 1)
                    continue;
                work--;
                // Between what is at - 1 and at now.
                var parted = freed + Jump(at - 1, at);
                var kept = Between(ExitAt(at - 1), EntryAt(i)) + Between(ExitAt(j), EntryAt(at));
                var turned =
                    Between(ExitAt(at - 1), EntryTurned(j))
                    + Between(ExitTurned(i), EntryAt(at))
                    + Turned(i, j)
                    - Stretch(i, j);
                if (parted - kept <= Nothing && !(turns && parted - turned > Nothing))
                    continue;
                if (turns && turned < kept)
                    Turn(i, j);
                Swap(Math.Min(i, at), at < i ? i : j + 1, Math.Max(j + 1, at));
                return true;
            }
        }
        return false;
    }

    /// <summary>Every loop begins where both its jumps are least.</summary>
    private bool Begin()
    {
        var before = Total();
        for (var i = 0; i < count; i++)
            if (order[i].IsLoop)
                order[i].BeginBetween(ExitAt(i - 1), EntryAt(i + 1));
        return Total() < before - Nothing;
    }

    /// <summary>Two stretches at random change places, and their loops begin anywhere.</summary>
    private void Shake()
    {
        var a = Below(count - 1);
        var b = a + 1 + Below(Math.Min(LongestSwapped, count - 1 - a));
        var c = b + 1 + Below(Math.Min(LongestSwapped, count - b));
        if (Enumerable.Range(b, c - b).All(k => LastBelow(k, b) < a))
            Swap(a, b, c);
        for (var i = a; i < c; i++)
            order[i].Way = (order[i].Way.Turned, Below(order[i].Holes));
    }

    /// <summary>What is from one place up to the second changes places with what is from there up to the third.</summary>
    private void Swap(int from, int middle, int to)
    {
        Stay[] swapped = [.. order[middle..to], .. order[from..middle]];
        swapped.CopyTo(order, from);
    }

    private void Turn(int i, int j)
    {
        Array.Reverse(order, i, j - i + 1);
        for (var k = i; k <= j; k++)
            order[k].Turn();
    }

    private void Note()
    {
        work -= count;
        Array.Fill(firstOf, count);
        Array.Fill(lastOf, -1);
        for (var i = 0; i < count; i++)
        {
            var piece = order[i].Piece;
            (firstOf[piece], lastOf[piece]) = (Math.Min(firstOf[piece], i), i);
            if (i == 0)
                continue;
            there[i] = there[i - 1] + Jump(i - 1, i);
            back[i] = back[i - 1] + Between(ExitTurned(i), EntryTurned(i - 1));
        }
        for (var i = 0; i < count; i++)
        {
            (lastBelow[i], firstAbove[i]) = (-1, count);
            foreach (var piece in below[order[i].Piece])
                lastBelow[i] = Math.Max(lastBelow[i], lastOf[piece]);
            foreach (var piece in above[order[i].Piece])
                firstAbove[i] = Math.Min(firstAbove[i], firstOf[piece]);
        }
    }

    /// <summary>The last place before another of what the block at a place lies over.</summary>
    private int LastBelow(int at, int before)
    {
        var under = below[order[at].Piece];
        for (var k = before - 1; k >= 0; k--)
            if (under.Contains(order[k].Piece))
                return k;
        return -1;
    }

    private double Total()
    {
        var sum = 0.0;
        for (var i = 0; i < count; i++)
            sum += Jump(i - 1, i);
        return sum;
    }

    private Point? EntryAt(int i) => i < count ? order[i].Entry : null;

    private Point? ExitAt(int i) => i < 0 ? needle : order[i].Exit;

    private Point? EntryTurned(int i) => order[i].Turns ? order[i].Exit : order[i].Entry;

    private Point? ExitTurned(int i) => order[i].Turns ? order[i].Entry : order[i].Exit;

    private double Jump(int from, int to) => Between(ExitAt(from), EntryAt(to));

    private double Stretch(int i, int j) => there[j] - there[i];

    private double Turned(int i, int j) => back[j] - back[i];

    private static double Between(Point? from, Point? to) => from is { } a && to is { } b ? JumpOrder.Cost(a, b) : 0;

    /// <summary>A number below a bound (xorshift64*, Marsaglia 2003 and Vigna 2016, from memory).</summary>
    private int Below(int bound)
    {
        state ^= state >> 12;
        state ^= state << 25;
        state ^= state >> 27;
        return (int)((state * 2685821657736338717UL >> 33) % (ulong)bound);
    }
}
