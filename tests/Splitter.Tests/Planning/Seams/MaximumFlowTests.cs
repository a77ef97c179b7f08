using CsCheck;
using Google.OrTools.Graph;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

public sealed class MaximumFlowTests
{
    /// <summary>Cormen, Leiserson, Rivest and Stein, Introduction to Algorithms, 4th edition, figure 24.6: flow 23.</summary>
    [Fact]
    public void TheNetworkOfATextbook()
    {
        // s, v1, v2, v3, v4, t
        (int From, int To, long Capacity)[] arcs =
        [
            (0, 1, 16),
            (0, 2, 13),
            (1, 3, 12),
            (2, 1, 4),
            (2, 4, 14),
            (3, 2, 9),
            (3, 5, 20),
            (4, 3, 7),
            (4, 5, 4),
        ];
        var flow = new MaximumFlow(6);
        flow.AddTerminals(0, 1000, 0);
        flow.AddTerminals(5, 0, 1000);
        foreach (var (from, to, capacity) in arcs)
            flow.AddArcs(from, to, capacity, 0);
        Assert.Equal(23, flow.Solve());
        Assert.Equal([0, 1, 2, 4], Enumerable.Range(0, 6).Where(flow.IsOnSourceSide));
    }

    /// <summary>Random networks, some dense, some with hardly any arcs, against the maximum flow of Google's OR-Tools.</summary>
    [Fact]
    public void RandomNetworksAgainstAnIndependentSolver() =>
        (
            from nodes in Gen.Int[1, 40]
            from arcs in Gen.Select(
                Gen.Int[0, nodes - 1],
                Gen.Int[0, nodes - 1],
                Gen.Long[0, 50],
                Gen.Long[0, 50]
            ).List[0, 160]
            from ends in Gen.Select(Gen.Long[0, 60], Gen.Long[0, 60]).Array[nodes]
            select (arcs, ends)
        ).Holds(
            t =>
            {
                var (ours, theirs) = (new MaximumFlow(t.ends.Length), new MaxFlow());
                var (source, sink) = (t.ends.Length, t.ends.Length + 1);
                for (var i = 0; i < t.ends.Length; i++)
                {
                    ours.AddTerminals(i, t.ends[i].Item1, t.ends[i].Item2);
                    theirs.AddArcWithCapacity(source, i, t.ends[i].Item1);
                    theirs.AddArcWithCapacity(i, sink, t.ends[i].Item2);
                }
                foreach (var (from, to, there, back) in t.arcs.Where(a => a.Item1 != a.Item2))
                {
                    ours.AddArcs(from, to, there, back);
                    theirs.AddArcWithCapacity(from, to, there);
                    theirs.AddArcWithCapacity(to, from, back);
                }
                Assert.Equal(MaxFlow.Status.OPTIMAL, theirs.Solve(source, sink));
                Assert.Equal(theirs.OptimalFlow(), ours.Solve());

                // The cut it names is worth the flow: no other can be worth less.
                long cut = 0;
                for (var i = 0; i < t.ends.Length; i++)
                    cut += ours.IsOnSourceSide(i) ? t.ends[i].Item2 : t.ends[i].Item1;
                foreach (var (from, to, there, back) in t.arcs.Where(a => a.Item1 != a.Item2))
                    cut +=
                        ours.IsOnSourceSide(from) == ours.IsOnSourceSide(to) ? 0
                        : ours.IsOnSourceSide(from) ? there
                        : back;
                Assert.Equal(ours.Flow, cut);
            },
            cases: 400
        );
}
