namespace Splitter.Planning.Seams;

/// <summary>
/// Chooses a field for every node at little cost, by expansions: one field after the other takes, in one minimum cut,
/// whatever it is best that it takes; until no field gains any more. Boykov, Veksler and Zabih 2001, IEEE TPAMI
/// 23(11):1222-1239. Both kinds of link obey the triangle inequality, which the method needs. Where two fields meet one
/// round is exact (the second field gives back what the first took too much of). Where three or more meet there is no
/// promise, since a link of one over another costs nothing one way; against brute force it is nearly always the least.
/// </summary>
internal static class Labelling
{
    /// <summary>Rounds over all fields. Three or four are usual; a bound, so that work has one too.</summary>
    private const int MostRounds = 12;

    /// <param name="start">A field for each node, one of those that can have it; -1 where none can.</param>
    /// <param name="jobs">How many threads may work.</param>
    internal static int[] Solve(LabelProblem problem, ReadOnlySpan<int> start, int jobs = 1)
    {
        var choice = start.ToArray();
        var nodesOf = new Dictionary<int, List<int>>();
        for (var node = 0; node < problem.NodeCount; node++)
            if (problem.Fields[node].Length > 1)
                foreach (var field in problem.Fields[node])
                {
                    if (!nodesOf.TryGetValue(field, out var nodes))
                        nodesOf[field] = nodes = [];
                    nodes.Add(node);
                }
        int[] fields = [.. nodesOf.Keys.Order()];

        if (fields.Length == 0)
            return choice;
        var beside = problem.Beside();
        // An expansion is worth trying again only after something that it could take, or beside it, has changed.
        var stale = new bool[beside.GetLength(0)];
        Array.Fill(stale, true);
        var places = new int[problem.NodeCount];
        // Fields that lie nowhere beside each other take what they take at once: neither sees what the other does.
        for (var round = 0; round < MostRounds && Array.Exists(fields, field => stale[field]); round++)
            InOrder.Select(fields, jobs, (one, earlier) => beside[fields[one], fields[earlier]], Take);
        return choice;

        bool Take(int field)
        {
            if (!stale[field])
                return false;
            foreach (var node in Expand(problem, choice, field, nodesOf[field], places))
            {
                Spoil(node);
                foreach (var link in problem.LinksOf(node))
                {
                    Spoil(problem.Links[link].A);
                    Spoil(problem.Links[link].B);
                }
            }
            return stale[field] = false;
        }

        void Spoil(int node)
        {
            foreach (var field in problem.Fields[node])
                stale[field] = true;
        }
    }

    /// <summary>Lets a field take what it is best that it takes, and returns that.</summary>
    /// <param name="places">Scratch: all zero before and after.</param>
    private static List<int> Expand(LabelProblem problem, int[] choice, int field, List<int> nodes, int[] places)
    {
        var free = nodes.FindAll(node => choice[node] != field);
        var flow = Flow(problem, choice, field, free, places);
        flow.Solve();
        var taken = free.Where((_, i) => flow.IsOnSourceSide(i)).ToList();
        foreach (var node in taken)
            choice[node] = field;
        return taken;
    }

    /// <summary>The cut that says what a field takes: what lies on the source's side.</summary>
    /// <param name="free">What it may take.</param>
    /// <param name="places">Scratch: all zero before and after.</param>
    internal static MaximumFlow Flow(LabelProblem problem, int[] choice, int field, List<int> free, int[] places)
    {
        for (var i = 0; i < free.Count; i++)
            places[free[i]] = i + 1;
        var (take, keep) = (new long[free.Count], new long[free.Count]);
        var flow = new MaximumFlow(free.Count);
        for (var i = 0; i < free.Count; i++)
        {
            take[i] += problem.OwnCost(free[i], field);
            keep[i] += problem.OwnCost(free[i], choice[free[i]]);
            foreach (var l in problem.LinksOf(free[i]))
            {
                ref readonly var link = ref problem.Links[l];
                var (atA, atB) = (places[link.A] - 1, places[link.B] - 1);
                var (keptA, keptB) = (choice[link.A], choice[link.B]);
                var (bothKeep, firstTakes) = (link.Cost(keptA, keptB), link.Cost(field, keptB));
                var secondTakes = link.Cost(keptA, field);
                if (atB < 0)
                    (take[atA], keep[atA]) = (take[atA] + firstTakes, keep[atA] + bothKeep);
                else if (atA < 0)
                    (take[atB], keep[atB]) = (take[atB] + secondTakes, keep[atB] + bothKeep);
                else if (atA == i)
                {
                    // Kolmogorov and Zabih 2004: a constant, a cost of each end alone, and one of the pair. As much as
                    // can be is asked of the pair, both ways: costs of ends, a little more here and less there, would
                    // have to flow from cell to cell all over the ground.
                    var both = firstTakes + secondTakes - bothKeep;
                    var way = Math.Clamp(firstTakes - bothKeep, 0, both);
                    take[atA] += firstTakes - bothKeep - way;
                    take[atB] += way - firstTakes;
                    flow.AddArcs(atB, atA, both - way, way);
                }
            }
        }
        for (var i = 0; i < free.Count; i++)
        {
            var least = Math.Min(take[i], keep[i]);
            flow.AddTerminals(i, keep[i] - least, take[i] - least);
        }
        foreach (var node in free)
            places[node] = 0;
        return flow;
    }
}
