using System.Collections.Immutable;

namespace Splitter.Parts;

/// <summary>
/// Few changes of thread for things that must be sewn after others. A state is the set of what has been sewn; one more
/// thread sews all that it can. States of as many threads are kept side by side, the most promising ones of them (beam
/// search): those that need the fewest threads still at least.
/// </summary>
internal sealed class ThreadSearch
{
    /// <summary>Most states side by side.</summary>
    private const int Widest = 500;

    /// <summary>
    /// Things and their order that are looked at for one more thread, so that few things are searched widely.
    /// </summary>
    private const long LevelWork = 2_000_000;

    /// <summary>And in all; what is left then is sewn by the most promising thread, one after the other.</summary>
    private const long MostWork = 100_000_000;

    private readonly ImmutableArray<int> threads;
    private readonly IReadOnlyList<IReadOnlyList<int>> below;
    private readonly int[] changesAbove;

    /// <summary>What one pass through all things looks at.</summary>
    private readonly long pass;

    /// <param name="threads">The thread of each thing.</param>
    /// <param name="below">For each thing those that are sewn before it; all come before it in the list.</param>
    internal ThreadSearch(ImmutableArray<int> threads, IReadOnlyList<IReadOnlyList<int>> below)
    {
        (this.threads, this.below) = (threads, below);
        pass = 1 + threads.Length + below.Sum(b => b.Count);
        changesAbove = new int[threads.Length];
        for (var i = threads.Length - 1; i >= 0; i--)
            foreach (var j in below[i])
                changesAbove[j] = Math.Max(changesAbove[j], changesAbove[i] + (threads[i] == threads[j] ? 0 : 1));
    }

    /// <summary>Passes through all things so far, times what a pass looks at.</summary>
    internal long Work { get; private set; }

    /// <param name="Thread">The last one that was in, -1 before the first.</param>
    /// <param name="Before">The state before that.</param>
    /// <param name="Bound">Threads that are still to come at least.</param>
    private sealed record State(bool[] Sewn, int Thread, State? Before, int Bound)
    {
        internal string Key { get; } = new([.. Sewn.Select(sewn => sewn ? '1' : '0')]);
    }

    /// <summary>Groups in sewing order; within a group things keep the order of the list.</summary>
    internal ImmutableArray<ImmutableArray<int>> Fewest()
    {
        var states = new List<State> { new(new bool[threads.Length], -1, null, threads.IsEmpty ? 0 : 1) };
        while (states[0].Bound > 0)
        {
            var before = Work;
            // A stable sort: of equals, the thread of the earlier thing.
            List<State> next = [.. states.SelectMany(Next).DistinctBy(s => s.Key).OrderBy(s => s.Bound)];
            var each = Math.Max(1, (Work - before) / states.Count);
            states = next[..(int)Math.Clamp(Work > MostWork ? 1 : LevelWork / each, 1, Math.Min(Widest, next.Count))];
        }
        return Groups(states[0]);
    }

    private IEnumerable<State> Next(State state)
    {
        Work += pass;
        return Enumerable
            .Range(0, threads.Length)
            .Where(i => threads[i] != state.Thread && CanSew(state.Sewn, i))
            .Select(i => threads[i])
            .Distinct()
            .Select(thread => With(state, thread));
    }

    private State With(State state, int thread)
    {
        Work += pass;
        var (sewn, most, still) = ((bool[])state.Sewn.Clone(), 0, new HashSet<int>());
        // What lies below comes earlier in the list, so one walk through it sews all that the thread can.
        for (var i = 0; i < threads.Length; i++)
            if (threads[i] == thread && CanSew(sewn, i))
                sewn[i] = true;
        for (var i = 0; i < threads.Length; i++)
            if (!sewn[i])
            {
                most = Math.Max(most, changesAbove[i] + 1);
                still.Add(threads[i]);
            }
        return new(sewn, thread, state, Math.Max(most, still.Count));
    }

    private bool CanSew(bool[] sewn, int thing)
    {
        if (sewn[thing])
            return false;
        foreach (var other in below[thing])
            if (!sewn[other])
                return false;
        return true;
    }

    private static ImmutableArray<ImmutableArray<int>> Groups(State last)
    {
        var groups = new Stack<ImmutableArray<int>>();
        for (var state = last; state.Before is { } before; state = before)
            groups.Push([.. Enumerable.Range(0, state.Sewn.Length).Where(i => state.Sewn[i] && !before.Sewn[i])]);
        return [.. groups];
    }
}
