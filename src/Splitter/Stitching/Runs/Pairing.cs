using System.Collections.Immutable;
using System.Numerics;

namespace Splitter.Stitching.Runs;

/// <summary>
/// Pairs of things with the least sum of distances, two of them left alone. Exact for few; for many the nearest are
/// paired first, and changed until no change of a few pairs that is looked at is shorter.
/// </summary>
internal sealed class Pairing
{
    /// <summary>So many things are paired exactly: the table of sets stays small.</summary>
    internal const int Exact = 16;

    /// <summary>So many of the things nearest to one are looked at as mates for it.</summary>
    private const int Looked = 16;

    /// <summary>So many pairs are changed at once at most, less two.</summary>
    private const int Deepest = 12;

    /// <summary>How many mates are tried for the first things of a change, for later ones one each.</summary>
    private static readonly ImmutableArray<int> Widths = [12, 8, 5, 3, 2];

    /// <summary>Lengths that rounding of sums makes of nothing, µm.</summary>
    private const double Nothing = 1e-3;

    private readonly int count;
    private readonly Func<int, int, double> distance;

    private Pairing(int count, Func<int, int, double> distance) => (this.count, this.distance) = (count, distance);

    /// <param name="count">Even, at least two.</param>
    /// <returns>The pairs, and one of the two that are left alone.</returns>
    internal static (List<(int A, int B)> Pairs, int Free) Least(int count, Func<int, int, double> distance)
    {
        var pairing = new Pairing(count, distance);
        // Two more that are at no distance from any thing stand for being left alone.
        var pairs = count <= Exact ? pairing.Best([.. Enumerable.Range(0, count + 2)]) : pairing.Many();
        return ([.. pairs.Where(p => p.B < count)], pairs.Where(p => p.B >= count).Min(p => p.A));
    }

    private double Between(int a, int b) =>
        a < count && b < count ? distance(a, b)
        : a >= count && b >= count ? double.PositiveInfinity
        : 0;

    /// <summary>
    /// The nearest two first, then bettered by changes of a few pairs at once (after Lin and Kernighan 1973, from
    /// memory).
    /// </summary>
    private List<(int A, int B)> Many()
    {
        var mates = Nearest();
        ImmutableArray<ImmutableArray<int>> near =
        [
            .. Enumerable
                .Range(0, count + 2)
                .Select(a =>
                    Enumerable
                        .Range(0, count + 2)
                        .Where(b => b != a)
                        .OrderBy(b => Between(a, b)) // A stable sort.
                        .Take(Looked)
                        .ToImmutableArray()
                ),
        ];
        for (var (start, idle) = (0, 0); idle < count + 2; start = (start + 1) % (count + 2))
            idle = Better(mates, near, start) ? 0 : idle + 1;
        return [.. Enumerable.Range(0, count + 2).Where(a => a < mates[a]).Select(a => (a, mates[a]))];
    }

    /// <summary>The mate of each thing.</summary>
    private int[] Nearest()
    {
        var mates = new int[count + 2];
        Array.Fill(mates, -1);
        var all =
            from a in Enumerable.Range(0, count)
            from b in Enumerable.Range(a + 1, count - a - 1)
            orderby distance(a, b) // A stable sort.
            select (a, b);
        foreach (var (a, b) in all)
            if (mates[a] < 0 && mates[b] < 0)
                (mates[a], mates[b]) = (b, a);
        // The pair that is farthest apart is left alone instead.
        var far = Enumerable.Range(0, count).MaxBy(a => distance(a, mates[a]));
        var other = mates[far];
        (mates[far], mates[count], mates[other], mates[count + 1]) = (count, far, count + 1, other);
        return mates;
    }

    /// <summary>
    /// Takes the pair of a thing apart, gives its mate another mate, whose own mate then is without, and so on, as long
    /// as something is gained so far; true when it is closed at a gain.
    /// </summary>
    private bool Better(int[] mates, ImmutableArray<ImmutableArray<int>> near, int start)
    {
        var chain = new List<int> { start, mates[start] };
        return Longer(Between(start, mates[start]), 0);

        bool Longer(double gain, int depth)
        {
            var alone = chain[^1];
            var looked = depth < Widths.Length ? Widths[depth] : 1;
            // To be left alone suits those best whose mates are far off.
            var mostFar = Enumerable.Range(0, count).OrderByDescending(t => Between(t, mates[t]));
            IEnumerable<int> likely = alone < count ? near[alone] : mostFar;
            foreach (var next in likely.Where(t => !chain.Contains(t)).Take(looked).ToList())
            {
                var left = gain - Between(alone, next);
                if (!(left > Nothing))
                    continue;
                chain.AddRange(next, mates[next]);
                var now = left + Between(next, mates[next]);
                if (now - Between(mates[next], start) > Nothing)
                {
                    for (var i = 1; i < chain.Count; i += 2)
                    {
                        var other = chain[(i + 1) % chain.Count];
                        (mates[chain[i]], mates[other]) = (other, chain[i]);
                    }
                    return true;
                }
                if (depth < Deepest && Longer(now, depth + 1))
                    return true;
                chain.RemoveRange(chain.Count - 2, 2);
            }
            return false;
        }
    }

    /// <summary>
    /// The best of all ways to pair a few things: for each set of them the best pairs, the last one first.
    /// </summary>
    private List<(int A, int B)> Best(int[] things)
    {
        var sums = new double[1 << things.Length];
        var with = new int[1 << things.Length];
        for (var set = 1; set < sums.Length; set++)
        {
            if (BitOperations.PopCount((uint)set) % 2 == 1)
                continue;
            sums[set] = double.PositiveInfinity;
            var last = BitOperations.Log2((uint)set);
            for (var k = 0; k < last; k++)
                if (
                    (set >> k & 1) == 1
                    && sums[set ^ (1 << last) ^ (1 << k)] + Between(things[k], things[last]) is var sum
                    && sum < sums[set]
                )
                    (sums[set], with[set]) = (sum, k);
        }
        var pairs = new List<(int A, int B)>();
        for (var set = sums.Length - 1; set > 0; )
        {
            var last = BitOperations.Log2((uint)set);
            pairs.Add((things[with[set]], things[last]));
            set ^= (1 << last) | (1 << with[set]);
        }
        return pairs;
    }
}
