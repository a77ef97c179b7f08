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
        Parallel.For(
            0,
            jobs,
            new() { MaxDegreeOfParallelism = jobs },
            _ =>
            {
                for (int i; (i = Interlocked.Increment(ref next)) < things.Count; )
                    results[i] = work(things[i]);
            }
        );
        return ImmutableCollectionsMarshal.AsImmutableArray(results);
    }

    /// <summary>
    /// The same where things wait for earlier ones: in rounds, each thing as soon as all those are through, so that
    /// what it finds does not depend on how many threads there are either.
    /// </summary>
    /// <param name="waits">Whether one thing waits for an earlier one, by their places.</param>
    internal static ImmutableArray<TResult> Select<T, TResult>(
        IReadOnlyList<T> things,
        int jobs,
        Func<int, int, bool> waits,
        Func<T, TResult> work
    )
    {
        var rounds = new int[things.Count];
        for (var one = 0; one < rounds.Length; one++)
        for (var earlier = 0; earlier < one; earlier++)
            if (rounds[earlier] >= rounds[one] && waits(one, earlier))
                rounds[one] = rounds[earlier] + 1;
        var results = new TResult[things.Count];
        foreach (var round in Enumerable.Range(0, things.Count).GroupBy(i => rounds[i]).OrderBy(round => round.Key))
        {
            int[] places = [.. round];
            Select(places, jobs, i => results[i] = work(things[i]));
        }
        return ImmutableCollectionsMarshal.AsImmutableArray(results);
    }
}
