using System.Collections.Immutable;
using CsCheck;
using Splitter.Parts;

namespace Splitter.Tests.Parts;

/// <summary>Against every order of up to eight things, and laws that hold for any number.</summary>
public sealed class ThreadSearchTests
{
    private static Gen<(int[] Threads, List<int>[] Below)> Things(int most) =>
        from threads in Gen.Int[0, 3].Array[1, most]
        from over in Gen.Int[0, 3].Array[threads.Length * threads.Length]
        select (
            threads,
            Enumerable
                .Range(0, threads.Length)
                .Select(i => Enumerable.Range(0, i).Where(j => over[(i * threads.Length) + j] == 0).ToList())
                .ToArray()
        );

    [Fact]
    public void NoOrderOfUpToEightThingsHasFewerChanges() =>
        Things(8)
            .Holds(
                things =>
                {
                    var groups = new ThreadSearch([.. things.Threads], things.Below).Fewest();
                    Assert.Equal(FewestOfAllOrders(things.Threads, things.Below), groups.Length);
                },
                cases: 300
            );

    [Fact]
    public void EverythingIsSewnOnceWithItsThreadAndAfterWhatLiesBelow() =>
        Things(60)
            .Holds(
                things =>
                {
                    var groups = new ThreadSearch([.. things.Threads], things.Below).Fewest();
                    ImmutableArray<int> order = [.. groups.SelectMany(g => g)];
                    Assert.Equal(Enumerable.Range(0, things.Threads.Length), order.Order());
                    Assert.All(groups, g => Assert.Single(g.Select(i => things.Threads[i]).Distinct()));
                    foreach (var i in order)
                        Assert.All(things.Below[i], j => Assert.True(order.IndexOf(j) < order.IndexOf(i)));
                },
                cases: 100
            );

    /// <summary>Chains of seven things in twelve threads.</summary>
    [Fact]
    public void ThousandsOfThingsTakeBoundedWork()
    {
        const int Count = 3000;
        var search = new ThreadSearch(
            [.. Enumerable.Range(0, Count).Select(i => i % 12)],
            [.. Enumerable.Range(0, Count).Select(i => i % 7 == 0 ? Array.Empty<int>() : [i - 1, i - 1 - (i % 7 / 2)])]
        );
        Assert.Equal(Count, search.Fewest().Sum(g => g.Length));
        Assert.InRange(search.Work, 1, 200_000_000);
    }

    private static int FewestOfAllOrders(int[] threads, List<int>[] below)
    {
        var best = int.MaxValue;
        Go(0, -1, 0);
        return best;

        void Go(int sewn, int last, int changes)
        {
            if (changes >= best)
                return;
            if (sewn == (1 << threads.Length) - 1)
                best = changes;
            for (var i = 0; i < threads.Length; i++)
                if ((sewn >> i & 1) == 0 && below[i].TrueForAll(j => (sewn >> j & 1) == 1))
                    Go(sewn | (1 << i), threads[i], changes + (threads[i] == last ? 0 : 1));
        }
    }
}
