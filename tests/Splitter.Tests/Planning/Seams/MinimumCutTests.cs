using CsCheck;
using Google.OrTools.Graph;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

public sealed class MinimumCutTests
{
    /// <summary>
    /// Cormen, Leiserson, Rivest and Stein, Introduction to Algorithms, 4th edition, figure 24.6: flow 23, cut
    /// {s, v1, v2, v4}.
    /// </summary>
    [Fact]
    public void TheTextbooksNetworkCarries23()
    {
        var network = new MinimumCut(4);
        var (v1, v2, v3, v4) = (0, 1, 2, 3);
        network.AddTerminals(v1, 16, 0);
        network.AddTerminals(v2, 13, 0);
        network.AddLink(v1, v3, 12, 0);
        network.AddLink(v2, v1, 4, 0);
        network.AddLink(v2, v4, 14, 0);
        network.AddLink(v3, v2, 9, 0);
        network.AddTerminals(v3, 0, 20);
        network.AddLink(v4, v3, 7, 0);
        network.AddTerminals(v4, 0, 4);
        network.Solve();
        Assert.Equal(23, network.Flow);
        Assert.Equal([v3], Enumerable.Range(0, 4).Where(network.IsOnSinkSide));
    }

    /// <summary>Google.OrTools' push-relabel maximum flow, on networks of any shape, with arcs both ways and parallel.</summary>
    [Fact]
    public void RandomNetworksCarryWhatAnotherSolverSays() =>
        (
            from nodes in Gen.Int[1, 14]
            from links in Gen.Select(
                Gen.Int[0, nodes - 1],
                Gen.Int[0, nodes - 1],
                Gen.Int[0, 30],
                Gen.Int[0, 30]
            ).Array[0, 40]
            from terminals in Gen.Select(Gen.Int[0, nodes - 1], Gen.Int[0, 40], Gen.Int[0, 40]).Array[0, 20]
            select (nodes, links, terminals)
        ).Holds(
            network =>
            {
                var (nodes, links, terminals) = network;
                var (ours, theirs) = (new MinimumCut(nodes), new MaxFlow());
                // The source first, so that it exists even when nothing is joined to it.
                theirs.AddArcWithCapacity(nodes, nodes + 1, 0);
                foreach (var (node, fromSource, toSink) in terminals)
                {
                    ours.AddTerminals(node, fromSource, toSink);
                    theirs.AddArcWithCapacity(nodes, node, fromSource);
                    theirs.AddArcWithCapacity(node, nodes + 1, toSink);
                }
                foreach (var (a, b, there, back) in links.Where(l => l.Item1 != l.Item2))
                {
                    ours.AddLink(a, b, there, back);
                    theirs.AddArcWithCapacity(a, b, there);
                    theirs.AddArcWithCapacity(b, a, back);
                }
                ours.Solve();
                Assert.Equal(MaxFlow.Status.OPTIMAL, theirs.Solve(nodes, nodes + 1));
                Assert.Equal(theirs.OptimalFlow(), ours.Flow);

                // The cut that it names is worth the flow.
                var cut =
                    terminals.Sum(t => ours.IsOnSinkSide(t.Item1) ? t.Item2 : t.Item3)
                    + links.Sum(l =>
                        (ours.IsOnSinkSide(l.Item1), ours.IsOnSinkSide(l.Item2)) switch
                        {
                            (false, true) => l.Item3,
                            (true, false) => l.Item4,
                            _ => 0,
                        }
                    );
                Assert.Equal(ours.Flow, cut);
            },
            cases: 2000
        );
}
