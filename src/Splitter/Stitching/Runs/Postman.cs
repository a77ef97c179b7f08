using System.Collections.Immutable;

namespace Splitter.Stitching.Runs;

/// <summary>A way between two hubs.</summary>
internal readonly record struct Way(int From, int To, double Length);

/// <summary>One way of a walk.</summary>
/// <param name="Forward">From its <see cref="Way.From"/> to its <see cref="Way.To"/>.</param>
/// <param name="Again">It has been walked before.</param>
internal readonly record struct Walked(int Way, bool Forward, bool Again);

/// <summary>
/// The shortest walks over every way of a network, one for each connected part of it (the Chinese postman's problem:
/// Edmonds and Johnson 1973, from memory). A walk may begin and end anywhere, so two hubs of odd degree stay odd; the
/// others are paired so that what is walked again is shortest (<see cref="Pairing"/>).
/// </summary>
internal sealed class Postman
{
    private readonly ImmutableArray<Way> ways;
    private readonly List<int>[] at;
    private readonly int[] times;

    private Postman(int hubs, ImmutableArray<Way> ways, int times)
    {
        this.ways = ways;
        this.times = [.. ways.Select(_ => times)];
        at = [.. Enumerable.Range(0, hubs).Select(_ => new List<int>())];
        for (var i = 0; i < ways.Length; i++)
        {
            at[ways[i].From].Add(i);
            if (ways[i].To != ways[i].From)
                at[ways[i].To].Add(i);
        }
    }

    /// <summary>In the order of the first way of each.</summary>
    /// <param name="times">How often each way is walked at least.</param>
    internal static ImmutableArray<ImmutableArray<Walked>> Walks(int hubs, ImmutableArray<Way> ways, int times)
    {
        var postman = new Postman(hubs, ways, times);
        var walks = ImmutableArray.CreateBuilder<ImmutableArray<Walked>>();
        var seen = new bool[ways.Length];
        for (var i = 0; i < ways.Length; i++)
            if (!seen[i])
                walks.Add(postman.Trail(postman.MadeEven(postman.Connected(i, seen), ways[i].From)));
        return walks.ToImmutable();
    }

    /// <summary>The hubs that hang together with a way, in the order in which they are come to.</summary>
    private List<int> Connected(int way, bool[] seen)
    {
        var hubs = new List<int> { ways[way].From };
        var found = new HashSet<int>(hubs);
        for (var i = 0; i < hubs.Count; i++)
            foreach (var next in at[hubs[i]])
            {
                seen[next] = true;
                if (found.Add(Other(next, hubs[i])))
                    hubs.Add(Other(next, hubs[i]));
            }
        return hubs;
    }

    /// <summary>Repeats ways until no more than two hubs are odd; returns where a trail can begin.</summary>
    private int MadeEven(List<int> hubs, int otherwise)
    {
        int[] odd = [.. hubs.Where(h => at[h].Sum(w => ways[w].From == ways[w].To ? 0 : times[w]) % 2 == 1)];
        if (odd.Length == 0)
            return otherwise;
        // Lengths alone: the ways themselves of all would fill the memory.
        var lengths = odd.Select(h => Shortest(h).Length).Select(all => odd.Select(h => all[h]).ToArray()).ToArray();
        var (pairs, free) = Pairing.Least(odd.Length, (a, b) => lengths[Math.Min(a, b)][Math.Max(a, b)]);
        foreach (var (a, b) in pairs)
        {
            var last = Shortest(odd[a]).By;
            for (var hub = odd[b]; hub != odd[a]; hub = Other(last[hub], hub))
                times[last[hub]]++;
        }
        return odd[free];
    }

    /// <summary>Shortest ways from a hub to all others, and the last way of each (Dijkstra 1959).</summary>
    private (Dictionary<int, double> Length, Dictionary<int, int> By) Shortest(int from)
    {
        var (length, by) = (new Dictionary<int, double> { [from] = 0 }, new Dictionary<int, int>());
        var open = new PriorityQueue<int, (double, int)>();
        open.Enqueue(from, (0, from));
        while (open.TryDequeue(out var hub, out var reached))
        {
            if (reached.Item1 > length[hub])
                continue;
            foreach (var way in at[hub])
            {
                var (other, sum) = (Other(way, hub), length[hub] + ways[way].Length);
                if (length.TryGetValue(other, out var known) && known <= sum)
                    continue;
                (length[other], by[other]) = (sum, way);
                open.Enqueue(other, (sum, other));
            }
        }
        return (length, by);
    }

    /// <summary>Every way as often as it is to be walked, without a break (Hierholzer 1873).</summary>
    private ImmutableArray<Walked> Trail(int from)
    {
        var next = new int[at.Length];
        var (open, trail) = (new Stack<(int Hub, int By)>(), new List<(int Hub, int By)>());
        open.Push((from, -1));
        while (open.TryPeek(out var top))
        {
            var own = at[top.Hub];
            // A way's last turn is taken before the ones after it, so what is done never comes back.
            while (next[top.Hub] < own.Count && times[own[next[top.Hub]]] == 0)
                next[top.Hub]++;
            if (next[top.Hub] == own.Count)
                trail.Add(open.Pop());
            else
            {
                var way = own[next[top.Hub]];
                times[way]--;
                open.Push((Other(way, top.Hub), way));
            }
        }
        // Found from its end: each hub with the way that came to it.
        var walked = ImmutableArray.CreateBuilder<Walked>(trail.Count);
        var before = new HashSet<int>();
        for (var i = 0; i < trail.Count - 1; i++)
        {
            var way = trail[i].By;
            walked.Add(new(way, ways[way].From == trail[i].Hub, !before.Add(way)));
        }
        return walked.ToImmutable();
    }

    private int Other(int way, int hub) => ways[way].From == hub ? ways[way].To : ways[way].From;
}
