using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// Where grounds may begin along one axis. A field can be pushed one way until its edge meets something drawn there or
/// the edge of a field that covers what lies before: so it is enough to look at places flush with what is drawn, and at
/// chains of fields from either edge of the drawing, side by side or sharing what neighbours must.
/// </summary>
internal static class Positions
{
    /// <summary>Places along one axis for each way to turn the hoop; more are thinned out.</summary>
    private const int MostChained = 44;

    /// <param name="from">Where what is to be covered begins.</param>
    /// <param name="to">Where it ends.</param>
    /// <param name="starts">Where drawn things begin.</param>
    /// <param name="ends">Where drawn things end.</param>
    /// <param name="lengths">The ground's length for each turn.</param>
    /// <param name="phases">Where on the tape's grid grounds begin, for each turn.</param>
    /// <param name="least">What neighbours must share for a seam.</param>
    /// <param name="common">What neighbours must share for corners.</param>
    internal static int[][] Along(
        int from,
        int to,
        IEnumerable<int> starts,
        IEnumerable<int> ends,
        int[] lengths,
        int[] phases,
        int least,
        int common
    )
    {
        var turns = Enumerable.Range(0, lengths.Length).ToArray();
        var places = turns.Select(_ => new SortedSet<int>()).ToArray();
        foreach (var t in turns)
        {
            foreach (var start in starts)
                Put(t, Down(start, t));
            foreach (var end in ends)
                Put(t, Up(end - lengths[t], t));
        }
        foreach (var steps in new[] { new[] { least, common }, [common], [least] })
        {
            var chained = Chained(steps);
            if (chained.Sum(c => c.Count) > MostChained * turns.Length && steps.Length > 1)
                continue;
            if (chained.Sum(c => c.Count) > 4 * MostChained * turns.Length)
                continue;
            foreach (var t in turns)
                places[t].UnionWith(chained[t]);
            if (steps.Length > 1)
                break;
        }
        return [.. places.Select(p => p.ToArray())];

        SortedSet<int>[] Chained(int[] shared)
        {
            var found = turns.Select(_ => new SortedSet<int>()).ToArray();
            var seen = new HashSet<int>();
            var open = new Queue<int>([from]);
            while (open.TryDequeue(out var at))
            {
                if (at >= to || !seen.Add(at))
                    continue;
                foreach (var t in turns)
                {
                    found[t].Add(Inside(t, Down(at, t)));
                    foreach (var step in Steps(t, shared))
                        open.Enqueue(Down(at, t) + step);
                }
            }
            seen.Clear();
            open.Enqueue(to);
            while (open.TryDequeue(out var at))
            {
                if (at <= from || !seen.Add(at))
                    continue;
                foreach (var t in turns)
                {
                    found[t].Add(Inside(t, Up(at - lengths[t], t)));
                    foreach (var step in Steps(t, shared))
                        open.Enqueue(Up(at - lengths[t], t) + lengths[t] - step);
                }
            }
            return found;
        }

        // From one field of a chain to the next; one that is too narrow to share as much leads nowhere.
        IEnumerable<int> Steps(int turn, int[] shared) =>
            shared.Select(s => lengths[turn] - s).Where(step => step >= Units.TapeStep);

        void Put(int turn, int at) => places[turn].Add(Inside(turn, at));

        // What hangs over the edge covers no less further in.
        int Inside(int turn, int at)
        {
            var (first, last) = (Down(from, turn), Up(to - lengths[turn], turn));
            return last <= first ? Down((first + last) / 2, turn) : Math.Clamp(at, first, last);
        }

        int Down(int at, int turn) => at - Mod(at - phases[turn]);

        int Up(int at, int turn) => at + Mod(phases[turn] - at);
    }

    /// <summary>No more than a number of values, near ones merged into the smallest of them.</summary>
    /// <param name="values">Rising.</param>
    internal static List<int> Merged(IReadOnlyCollection<int> values, int most)
    {
        List<int> sorted = [.. values];
        for (var near = Units.TapeStep; sorted.Count > most; near *= 2)
        {
            var kept = new List<int>();
            foreach (var value in sorted)
                if (kept.Count == 0 || value - kept[^1] > near)
                    kept.Add(value);
            sorted = kept;
        }
        return sorted;
    }

    private static int Mod(int value) => ((value % Units.TapeStep) + Units.TapeStep) % Units.TapeStep;
}
