using System.Collections.Immutable;
using System.Numerics;

namespace Splitter.Parts;

/// <summary>
/// The fewest changes of thread for things that must be sewn after others. A state is the set of what has been sewn; one
/// more thread sews all that it can. States of as many threads are kept side by side, the most promising ones of them
/// (beam search): those that need the fewest threads still at least.
/// </summary>
internal sealed class ThreadSearch
{
    /// <summary>
    /// Things that are looked at for each number of threads: the search is wide for few things, where the answer is then
    /// most often proven, and bounded for many.
    /// </summary>
    private const int Work = 100_000;

    /// <summary>Most states side by side.</summary>
    private const int Widest = 500;

    private readonly ImmutableArray<int> threads;

    // Sets of things have a bit for each.
    private readonly ImmutableArray<BigInteger> below;
    private readonly ImmutableArray<int> changesAbove;

    /// <param name="threads">The thread of each thing.</param>
    /// <param name="below">For each thing those that are sewn before it; all come before it in the list.</param>
    internal ThreadSearch(ImmutableArray<int> threads, IReadOnlyList<IReadOnlyList<int>> below)
    {
        this.threads = threads;
        this.below = [.. below.Select(b => b.Aggregate(BigInteger.Zero, (set, i) => set | One(i)))];
        var changes = new int[threads.Length];
        for (var i = threads.Length - 1; i >= 0; i--)
            foreach (var j in below[i])
                changes[j] = Math.Max(changes[j], changes[i] + (threads[i] == threads[j] ? 0 : 1));
        changesAbove = [.. changes];
    }

    /// <param name="Thread">The last one that was in, -1 before the first.</param>
    /// <param name="Before">The state before that.</param>
    /// <param name="Bound">Threads that are still to come at least.</param>
    private sealed record State(BigInteger Sewn, int Thread, State? Before, int Bound);

    /// <summary>Groups in sewing order; within a group things keep the order of the list.</summary>
    internal ImmutableArray<ImmutableArray<int>> Fewest()
    {
        var width = Math.Clamp(Work / Math.Max(1, threads.Length), 1, Widest);
        var states = new List<State> { new(BigInteger.Zero, -1, null, threads.IsEmpty ? 0 : 1) };
        while (states[0].Bound > 0)
            states =
            [
                .. states
                    .SelectMany(Next)
                    .DistinctBy(s => s.Sewn) // The first of equals stays: not by the order of hashes.
                    .OrderBy(s => s.Bound) // A stable sort: of equals, the thread of the earlier thing.
                    .Take(width),
            ];
        return Groups(states[0]);
    }

    private IEnumerable<State> Next(State state) =>
        Enumerable
            .Range(0, threads.Length)
            .Where(i => threads[i] != state.Thread && CanSew(state.Sewn, i))
            .Select(i => threads[i])
            .Distinct()
            .Select(thread => With(state, thread));

    private State With(State state, int thread)
    {
        var (sewn, most, still) = (state.Sewn, 0, new HashSet<int>());
        // What lies below comes earlier in the list, so one walk through it sews all that the thread can.
        for (var i = 0; i < threads.Length; i++)
            if (threads[i] == thread && CanSew(sewn, i))
                sewn |= One(i);
        for (var i = 0; i < threads.Length; i++)
            if ((sewn & One(i)).IsZero)
            {
                most = Math.Max(most, changesAbove[i] + 1);
                still.Add(threads[i]);
            }
        return new(sewn, thread, state, Math.Max(most, still.Count));
    }

    private bool CanSew(BigInteger sewn, int thing) =>
        (sewn & One(thing)).IsZero && (sewn & below[thing]) == below[thing];

    private static ImmutableArray<ImmutableArray<int>> Groups(State last)
    {
        var groups = new Stack<ImmutableArray<int>>();
        for (var state = last; state.Before is { } before; state = before)
        {
            var own = state.Sewn & ~before.Sewn;
            groups.Push([.. Enumerable.Range(0, (int)own.GetBitLength()).Where(i => !(own & One(i)).IsZero)]);
        }
        return [.. groups];
    }

    private static BigInteger One(int thing) => BigInteger.One << thing;
}
