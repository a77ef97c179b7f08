using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Splitter;

/// <summary>
/// Work on several things at once, whose results stand in the order of the things: nothing depends on how many threads
/// there are. Whoever is free takes the next thing, so that large ones do not wait for each other.
/// </summary>
internal static class InOrder
{
    /// <summary>How many threads each of several things may have, when so many are worked on at once.</summary>
    internal static int Each(int jobs, int things) => Math.Max(1, jobs / Math.Max(1, things));

    /// <param name="jobs">How many threads may work.</param>
    /// <param name="work">Changes nothing that another thread sees.</param>
    internal static ImmutableArray<TResult> Select<T, TResult>(IReadOnlyList<T> things, int jobs, Func<T, TResult> work)
    {
        if (jobs == 1 || things.Count < 2)
            return [.. things.Select(work)];
        var results = new TResult[things.Count];
        var next = -1;
        AtOnce(
            jobs,
            () =>
            {
                for (int i; (i = Interlocked.Increment(ref next)) < things.Count; )
                    results[i] = work(things[i]);
            }
        );
        return ImmutableCollectionsMarshal.AsImmutableArray(results);
    }

    /// <summary>
    /// The same where things wait for earlier ones: each is worked on once all those are through, so that what it finds
    /// does not depend on how many threads there are either.
    /// </summary>
    /// <param name="waits">Whether one thing waits for an earlier one, by their places.</param>
    internal static ImmutableArray<TResult> Select<T, TResult>(
        IReadOnlyList<T> things,
        int jobs,
        Func<int, int, bool> waits,
        Func<T, TResult> work
    )
    {
        if (jobs == 1)
            return [.. things.Select(work)];
        var (results, turns) = (new TResult[things.Count], new Turns(things.Count, waits));
        AtOnce(
            jobs,
            () =>
            {
                while (turns.Take() is { } place)
                    try
                    {
                        results[place] = work(things[place]);
                    }
                    finally
                    {
                        turns.Through(place);
                    }
            }
        );
        return ImmutableCollectionsMarshal.AsImmutableArray(results);
    }

    /// <summary>Two different things at once.</summary>
    internal static (TOne One, TOther Other) Both<TOne, TOther>(int jobs, Func<TOne> one, Func<TOther> other)
    {
        var (first, second) = (default(TOne)!, default(TOther)!);
        Func<bool>[] both =
        [
            () =>
            {
                first = one();
                return true;
            },
            () =>
            {
                second = other();
                return true;
            },
        ];
        Select(both, jobs, work => work());
        return (first, second);
    }

    private static void AtOnce(int jobs, Action work) =>
        Parallel.For(0, jobs, new() { MaxDegreeOfParallelism = jobs }, _ => work());

    /// <summary>
    /// Whose turn it is: of those that wait for nobody any more the one that most wait for, one after the other (Hu
    /// 1961, from memory), so that not all of them are left at the end.
    /// </summary>
    private sealed class Turns
    {
        private readonly object gate = new();
        private readonly PriorityQueue<int, (int, int)> open = new();
        private readonly List<int>[] waiting;

        // How many each waits for still, how long a chain waits for it, and how many have not had their turn.
        private readonly int[] before;
        private readonly int[] behind;
        private int left;

        internal Turns(int count, Func<int, int, bool> waits)
        {
            waiting = [.. Enumerable.Range(0, count).Select(_ => new List<int>())];
            (before, behind, left) = (new int[count], new int[count], count);
            for (var earlier = count - 1; earlier >= 0; earlier--)
            for (var one = earlier + 1; one < count; one++)
                if (waits(one, earlier))
                {
                    waiting[earlier].Add(one);
                    before[one]++;
                    behind[earlier] = Math.Max(behind[earlier], behind[one] + 1);
                }
            for (var one = 0; one < count; one++)
                Open(one);
        }

        /// <summary>The place of the next one, as soon as there is one; null when all have had their turn.</summary>
        internal int? Take()
        {
            lock (gate)
            {
                while (open.Count == 0 && left > 0)
                    Monitor.Wait(gate);
                if (left == 0)
                    return null;
                left--;
                return open.Dequeue();
            }
        }

        internal void Through(int place)
        {
            lock (gate)
            {
                foreach (var one in waiting[place])
                {
                    before[one]--;
                    Open(one);
                }
                Monitor.PulseAll(gate);
            }
        }

        private void Open(int one)
        {
            if (before[one] == 0)
                open.Enqueue(one, (-behind[one], one));
        }
    }
}
