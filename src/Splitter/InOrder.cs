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
}
