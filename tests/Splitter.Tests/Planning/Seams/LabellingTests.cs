using CsCheck;
using Google.OrTools.Graph;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

public sealed class LabellingTests
{
    /// <summary>
    /// Two fields side by side over random artwork: what the seam costs on the grid is the minimum cut of the same costs by
    /// Google's OR-Tools.
    /// </summary>
    [Fact]
    public void TwoFieldsCostNoMoreThanTheMinimumCutOfAnIndependentSolver() =>
        (
            from shapes in SeamSamples.Shapes(60, 40).List[1, 12]
            from shared in Gen.Int[8, 20]
            select (Drawing: Samples.Drawing([.. shapes]), Shared: shared)
        ).Holds(
            t =>
            {
                var (grounds, problem) = State(t.Drawing, t.Shared);
                var start = problem.Fields.Select(fields => fields.Length == 0 ? -1 : fields[^1]).ToArray();
                var choice = Labelling.Solve(problem, start);
                Assert.Equal(MinimumCut(problem), problem.Cost(choice));
                for (var node = 0; node < problem.NodeCount; node++)
                    Assert.True(choice[node] < 0 || problem.Fields[node].Contains(choice[node]));
                Assert.Equal(2, grounds.Length);
            },
            cases: 30
        );

    /// <summary>Three and four fields on small grids, against every choice there is.</summary>
    [Theory]
    [InlineData(3, 3, 3)]
    [InlineData(4, 4, 2)]
    public void SeveralFieldsAgainstEveryChoice(int fields, int columns, int rows)
    {
        var (cases, best) = (0, 0);
        SmallProblems(fields, columns, rows)
            .Holds(
                problem =>
                {
                    var choice = Labelling.Solve(problem, Enumerable.Repeat(0, problem.NodeCount).ToArray());
                    var (found, least) = (problem.Cost(choice), LeastOfAll(problem, fields));
                    Assert.InRange(found, least, 2 * least);
                    cases++;
                    best += found == least ? 1 : 0;
                },
                cases: 60
            );
        // Nothing is promised; in fact it is nearly always the least.
        Assert.True(best >= 0.9 * cases, $"{best} of {cases}");
    }

    [Fact]
    public void TheSameChoiceEveryTime() =>
        SmallProblems(4, 6, 5)
            .Holds(
                problem =>
                {
                    var start = Enumerable.Repeat(0, problem.NodeCount).ToArray();
                    Assert.Equal(Labelling.Solve(problem, start), Labelling.Solve(problem, start));
                },
                cases: 20
            );

    /// <summary>
    /// Boundaries of plain ground cost a little more here and less there, since cells are whole micrometres wide. Where one
    /// field has all of it and nothing asks for another, nothing has to flow to see that.
    /// </summary>
    [Fact]
    public void UnevenGroundAloneMakesNothingFlow()
    {
        const int Side = 60;
        var problem = new LabelProblem([.. Enumerable.Range(0, Side * Side).Select(_ => new[] { 0, 1 })]);
        for (var cell = 0; cell < Side * Side; cell++)
        {
            if (cell % Side < Side - 1)
                problem.AddLink(cell, cell + 1, 1000 + (cell * 7 % 13), LinkKind.Apart);
            if (cell < Side * (Side - 1))
                problem.AddLink(cell, cell + Side, 1000 + (cell * 5 % 11), LinkKind.Apart);
        }
        var choice = new int[problem.NodeCount];
        var flow = Labelling.Flow(problem, choice, 1, [.. Enumerable.Range(0, Side * Side)], new int[Side * Side]);
        flow.Solve();
        Assert.Equal(0, flow.Flow);
        Assert.Equal(choice, Labelling.Solve(problem, choice));
    }

    /// <summary>
    /// Fields in a row, each beside the next alone: those that are further apart take what they take at once.
    /// </summary>
    [Fact]
    public void ThreadsMakeNoDifference()
    {
        const int fields = 12,
            each = 40;
        var problem = new LabelProblem([
            .. Enumerable.Range(0, fields * each).Select(node => new[] { node / each, (node / each) + 1 }),
        ]);
        for (var node = 0; node < problem.NodeCount; node++)
        {
            problem.AddOwn(node, node / each, node * 7919 % 101);
            problem.AddOwn(node, (node / each) + 1, node * 104_729 % 103);
            if (node > 0)
                problem.AddLink(node, node - 1, node * 31 % 97, node % 3 == 0 ? LinkKind.Over : LinkKind.Apart);
        }
        int[] start = [.. Enumerable.Range(0, problem.NodeCount).Select(node => node / each)];
        var beside = problem.Beside();
        for (var one = 0; one <= fields; one++)
        for (var other = 0; other <= fields; other++)
            // The last node of one field's and the first of the next but one's are linked.
            Assert.Equal(Math.Abs(one - other) <= 2, beside[one, other]);
        var alone = Labelling.Solve(problem, start);
        Assert.NotEqual(start, alone);
        Assert.Equal(alone, Labelling.Solve(problem, start, jobs: 4));
    }

    /// <summary>
    /// Of a problem that nobody has asked about yet several threads are the first to ask: each finds all links of a node.
    /// </summary>
    [Fact]
    public void ThreadsThatAskFirstFindAllLinks()
    {
        const int Nodes = 300_000;
        for (var again = 0; again < 10; again++)
        {
            var problem = new LabelProblem([.. Enumerable.Repeat<int[]>([0, 1], Nodes)]);
            for (var node = 1; node < Nodes; node++)
                problem.AddLink(node - 1, node, 1, LinkKind.Apart);
            using var start = new Barrier(4);
            var missed = new int[4];
            Thread[] threads =
            [
                .. Enumerable.Range(0, 4).Select(i => new Thread(() => missed[i] = Missed(problem, start))),
            ];
            foreach (var thread in threads)
                thread.Start();
            foreach (var thread in threads)
                thread.Join();
            Assert.Equal(new int[4], missed);
        }

        static int Missed(LabelProblem problem, Barrier start)
        {
            start.SignalAndWait();
            var missed = 0;
            for (var node = 1; node < Nodes - 1; node++)
                missed += problem.LinksOf(node).SequenceEqual([node - 1, node]) ? 0 : 1;
            return missed;
        }
    }

    private static (System.Collections.Immutable.ImmutableArray<Box> Grounds, LabelProblem Problem) State(
        Drawing drawing,
        int shared
    )
    {
        System.Collections.Immutable.ImmutableArray<Box> grounds =
        [
            new(0, 0, 30_000 + (shared * 500), 40_000),
            new(30_000 - (shared * 500), 0, 60_000, 40_000),
        ];
        var grid = new SeamGrid(grounds);
        return (
            grounds,
            SeamCosts.State(
                grid,
                drawing,
                new Wholeness(drawing, grounds),
                new SeamRoom(grounds, null, _ => true),
                new LayerMap(grid, drawing, new Wholeness(drawing, grounds).IsCut)
            )
        );
    }

    private static long MinimumCut(LabelProblem problem)
    {
        // Source: the first field. A node on its side belongs to it.
        var flow = new MaxFlow();
        var (source, sink) = (problem.NodeCount, problem.NodeCount + 1);
        const long Never = 1_000_000_000_000;
        for (var node = 0; node < problem.NodeCount; node++)
        {
            if (problem.Fields[node].Length == 0)
                continue;
            flow.AddArcWithCapacity(source, node, Cost(node, 1));
            flow.AddArcWithCapacity(node, sink, Cost(node, 0));
        }
        foreach (var (a, b, weight, kind) in problem.Links)
        {
            // Over: dear when the first belongs to the first field and what lies under it to the second.
            flow.AddArcWithCapacity(a, b, weight);
            if (kind == LinkKind.Apart)
                flow.AddArcWithCapacity(b, a, weight);
        }
        Assert.Equal(MaxFlow.Status.OPTIMAL, flow.Solve(source, sink));
        return flow.OptimalFlow();

        long Cost(int node, int field) => problem.Fields[node].Contains(field) ? problem.OwnCost(node, field) : Never;
    }

    private static long LeastOfAll(LabelProblem problem, int fields)
    {
        var (choice, least) = (new int[problem.NodeCount], long.MaxValue);
        while (true)
        {
            least = Math.Min(least, problem.Cost(choice));
            var node = 0;
            while (node < choice.Length && ++choice[node] == fields)
                choice[node++] = 0;
            if (node == choice.Length)
                return least;
        }
    }

    private static Gen<LabelProblem> SmallProblems(int fields, int columns, int rows) =>
        from own in Gen.Long[0, 30].Array[columns * rows * fields]
        from weights in Gen.Long[0, 20].Array[columns * rows * 4]
        from over in Gen.Select(
            Gen.Int[0, (columns * rows) - 1],
            Gen.Int[0, (columns * rows) - 1],
            Gen.Long[0, 20]
        ).Array[3]
        select Problem(fields, columns, rows, own, weights, over);

    private static LabelProblem Problem(
        int fields,
        int columns,
        int rows,
        long[] own,
        long[] weights,
        (int Upper, int Lower, long Weight)[] over
    )
    {
        int[] all = [.. Enumerable.Range(0, fields)];
        var problem = new LabelProblem([.. Enumerable.Repeat(all, columns * rows)]);
        for (var node = 0; node < columns * rows; node++)
        {
            foreach (var field in all)
                problem.AddOwn(node, field, own[(node * fields) + field]);
            var (column, row) = (node % columns, node / columns);
            Link(column + 1, row, 0);
            Link(column, row + 1, 1);
            Link(column + 1, row + 1, 2);
            Link(column - 1, row + 1, 3);

            void Link(int c, int r, int way)
            {
                if (c >= 0 && c < columns && r < rows)
                    problem.AddLink(node, (r * columns) + c, weights[(node * 4) + way], LinkKind.Apart);
            }
        }
        foreach (var (upper, lower, weight) in over)
            problem.AddLink(upper, lower, weight, LinkKind.Over);
        return problem;
    }
}
