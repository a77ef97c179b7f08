namespace Splitter.Planning.Seams;

/// <summary>
/// A network between a source and a sink and its cheapest cut, by the two search trees of Boykov and Kolmogorov 2004
/// (IEEE TPAMI 26(9):1124-1137), which are quick on the shallow networks that grids of cells make. Whole numbers
/// throughout, nodes in the order in which they became active: the same cut on every machine.
/// </summary>
internal sealed class MinimumCut
{
    /// <summary>Instead of an arc to the parent: the node hangs on its terminal directly.</summary>
    private const int Terminal = -2;

    /// <summary>Instead of an arc to the parent: in no tree.</summary>
    private const int Free = -1;

    /// <summary>Instead of an arc to the parent: cut off, looking for another one.</summary>
    private const int Orphan = -3;

    private readonly int[] first;
    private readonly int[] parent;
    private readonly bool[] inSinkTree;
    private readonly bool[] isActive;
    private readonly int[] checkedAt;
    private readonly int[] distance;

    /// <summary>What the terminals can still give (positive, from the source) or take (negative, to the sink).</summary>
    private readonly long[] excess;

    // Arcs by pairs: the counterpart of arc i is i ^ 1.
    private readonly List<int> to = [];
    private readonly List<int> next = [];
    private readonly List<long> room = [];

    private readonly Queue<int> active = new();
    private readonly Queue<int> orphans = new();
    private int time;

    internal MinimumCut(int nodes)
    {
        first = new int[nodes];
        parent = new int[nodes];
        Array.Fill(first, Free);
        Array.Fill(parent, Free);
        (inSinkTree, isActive) = (new bool[nodes], new bool[nodes]);
        (checkedAt, distance, excess) = (new int[nodes], new int[nodes], new long[nodes]);
    }

    /// <summary>The value of the flow, which is that of the cut.</summary>
    internal long Flow { get; private set; }

    /// <summary>Adds capacities from the source to a node and from it to the sink.</summary>
    internal void AddTerminals(int node, long fromSource, long toSink)
    {
        // What can pass straight through the node is sent there and then.
        if (excess[node] > 0)
            fromSource += excess[node];
        else
            toSink -= excess[node];
        Flow += Math.Min(fromSource, toSink);
        excess[node] = fromSource - toSink;
    }

    /// <summary>Adds capacities between two nodes, in both directions.</summary>
    internal void AddLink(int a, int b, long there, long back)
    {
        Add(a, b, there);
        Add(b, a, back);
    }

    /// <summary>The node lies on the sink's side of the cut nearest to the sink.</summary>
    internal bool IsOnSinkSide(int node) => parent[node] != Free && inSinkTree[node];

    /// <summary>Sends all the flow that the network carries.</summary>
    internal void Solve()
    {
        for (var i = 0; i < excess.Length; i++)
        {
            if (excess[i] == 0)
                continue;
            (parent[i], inSinkTree[i], distance[i]) = (Terminal, excess[i] < 0, 1);
            Activate(i);
        }
        while (active.Count > 0)
        {
            var node = active.Peek();
            var meeting = parent[node] == Free ? Free : Grow(node);
            if (meeting == Free)
            {
                active.Dequeue();
                isActive[node] = false;
                continue;
            }
            time++;
            Augment(meeting);
            while (orphans.TryDequeue(out var orphan))
                Adopt(orphan);
        }
    }

    private void Add(int from, int target, long capacity)
    {
        to.Add(target);
        room.Add(capacity);
        next.Add(first[from]);
        first[from] = to.Count - 1;
    }

    private void Activate(int node)
    {
        if (isActive[node])
            return;
        isActive[node] = true;
        active.Enqueue(node);
    }

    /// <summary>Takes free neighbours into the node's tree; returns an arc from the source's tree to the sink's, if met.</summary>
    private int Grow(int node)
    {
        for (var arc = first[node]; arc != Free; arc = next[arc])
        {
            var other = to[arc];
            if (room[inSinkTree[node] ? arc ^ 1 : arc] == 0)
                continue;
            if (parent[other] == Free)
            {
                (parent[other], inSinkTree[other]) = (arc ^ 1, inSinkTree[node]);
                (checkedAt[other], distance[other]) = (checkedAt[node], distance[node] + 1);
                Activate(other);
            }
            else if (inSinkTree[other] != inSinkTree[node])
                return inSinkTree[node] ? arc ^ 1 : arc;
            else if (checkedAt[other] <= checkedAt[node] && distance[other] > distance[node])
                (parent[other], checkedAt[other], distance[other]) = (arc ^ 1, checkedAt[node], distance[node] + 1);
        }
        return Free;
    }

    /// <summary>Sends what fits along the path over the meeting arc; nodes whose arc to the parent is full are orphans.</summary>
    private void Augment(int meeting)
    {
        var least = room[meeting];
        var node = to[meeting ^ 1];
        for (; parent[node] != Terminal; node = to[parent[node]])
            least = Math.Min(least, room[parent[node] ^ 1]);
        least = Math.Min(least, excess[node]);
        node = to[meeting];
        for (; parent[node] != Terminal; node = to[parent[node]])
            least = Math.Min(least, room[parent[node]]);
        least = Math.Min(least, -excess[node]);

        room[meeting] -= least;
        room[meeting ^ 1] += least;
        Send(to[meeting ^ 1], towardsParent: false, least);
        Send(to[meeting], towardsParent: true, least);
        Flow += least;
    }

    private void Send(int node, bool towardsParent, long amount)
    {
        while (parent[node] != Terminal)
        {
            var arc = towardsParent ? parent[node] : parent[node] ^ 1;
            var up = to[parent[node]];
            room[arc] -= amount;
            room[arc ^ 1] += amount;
            if (room[arc] == 0)
                CutOff(node);
            node = up;
        }
        excess[node] -= towardsParent ? -amount : amount;
        if (excess[node] == 0)
            CutOff(node);
    }

    private void CutOff(int node)
    {
        parent[node] = Orphan;
        orphans.Enqueue(node);
    }

    /// <summary>Finds the orphan a parent in its tree that hangs on the terminal, the nearest one; or sets it free.</summary>
    private void Adopt(int orphan)
    {
        var sink = inSinkTree[orphan];
        var (best, shortest) = (Free, int.MaxValue);
        for (var arc = first[orphan]; arc != Free; arc = next[arc])
        {
            var other = to[arc];
            if (room[sink ? arc : arc ^ 1] == 0 || inSinkTree[other] != sink || parent[other] == Free)
                continue;
            var length = DistanceToTerminal(other);
            if (length >= shortest)
                continue;
            (best, shortest) = (arc, length);
        }
        if (best != Free)
        {
            (parent[orphan], checkedAt[orphan], distance[orphan]) = (best, time, shortest + 1);
            return;
        }
        parent[orphan] = Free;
        for (var arc = first[orphan]; arc != Free; arc = next[arc])
        {
            var other = to[arc];
            if (inSinkTree[other] != sink || parent[other] == Free)
                continue;
            if (room[sink ? arc : arc ^ 1] > 0)
                Activate(other);
            if (parent[other] >= 0 && to[parent[other]] == orphan)
                CutOff(other);
        }
    }

    /// <summary>Steps to the terminal, or the largest number where the way ends at an orphan; remembered on the way.</summary>
    private int DistanceToTerminal(int from)
    {
        var (steps, node) = (0, from);
        while (true)
        {
            if (checkedAt[node] == time && parent[node] != Orphan)
            {
                steps += distance[node];
                break;
            }
            steps++;
            if (parent[node] == Terminal)
            {
                (checkedAt[node], distance[node]) = (time, 1);
                break;
            }
            if (parent[node] < 0)
                return int.MaxValue;
            node = to[parent[node]];
        }
        var length = steps;
        for (node = from; checkedAt[node] != time; node = to[parent[node]])
            (checkedAt[node], distance[node]) = (time, steps--);
        return length;
    }
}
