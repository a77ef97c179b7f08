namespace Splitter.Planning.Seams;

/// <summary>
/// Maximum flow and minimum cut by two search trees that grow towards each other from source and sink and are kept from
/// one augmenting path to the next: Boykov and Kolmogorov 2004, IEEE TPAMI 26(9):1124-1137, made for graphs like the
/// grids of seams, where it takes far fewer steps than its worst case. Whole numbers, so that the answer is exact.
/// </summary>
internal sealed class MaximumFlow
{
    private const int None = -1;
    private const int Terminal = -2;
    private const int Orphan = -3;

    private enum Tree : byte
    {
        Free,
        Source,
        Sink,
    }

    private readonly int[] firstArc;
    private readonly List<int> nextArc = [];
    private readonly List<int> head = [];
    private readonly List<long> left = [];

    /// <summary>What a node can still take from the source (positive) or give to the sink (negative).</summary>
    private readonly long[] terminal;

    private readonly Tree[] tree;

    /// <summary>The arc from a node towards its root.</summary>
    private readonly int[] parent;

    /// <summary>Steps to the root; certain where the stamp is the present time.</summary>
    private readonly int[] distance;
    private readonly int[] stamp;
    private readonly Queue<int> active = new();
    private readonly Queue<int> orphans = new();
    private int time;

    internal MaximumFlow(int nodes)
    {
        firstArc = new int[nodes];
        Array.Fill(firstArc, None);
        terminal = new long[nodes];
        tree = new Tree[nodes];
        parent = new int[nodes];
        Array.Fill(parent, None);
        distance = new int[nodes];
        stamp = new int[nodes];
    }

    /// <summary>The flow so far.</summary>
    internal long Flow { get; private set; }

    /// <summary>Adds arcs from the source to a node and from the node to the sink.</summary>
    internal void AddTerminals(int node, long fromSource, long toSink)
    {
        // What fits both runs straight through.
        if (terminal[node] > 0)
            fromSource += terminal[node];
        else
            toSink -= terminal[node];
        Flow += Math.Min(fromSource, toSink);
        terminal[node] = fromSource - toSink;
    }

    /// <summary>Adds an arc between two nodes, and one back.</summary>
    internal void AddArcs(int from, int to, long capacity, long back)
    {
        Add(from, to, capacity);
        Add(to, from, back);
    }

    private void Add(int from, int to, long capacity)
    {
        head.Add(to);
        left.Add(capacity);
        nextArc.Add(firstArc[from]);
        firstArc[from] = head.Count - 1;
    }

    /// <summary>
    /// The node is on the source's side of the minimum cut; of equal cuts the one with the fewest such nodes.
    /// </summary>
    internal bool IsOnSourceSide(int node) => tree[node] == Tree.Source;

    /// <summary>Finds the maximum flow.</summary>
    internal long Solve()
    {
        for (var node = 0; node < terminal.Length; node++)
            if (terminal[node] != 0)
            {
                tree[node] = terminal[node] > 0 ? Tree.Source : Tree.Sink;
                parent[node] = Terminal;
                distance[node] = 1;
                active.Enqueue(node);
            }
        while (active.TryPeek(out var node))
        {
            var bridge = tree[node] == Tree.Free ? None : Grow(node);
            if (bridge == None)
            {
                active.Dequeue();
                continue;
            }
            time++;
            Augment(bridge);
            while (orphans.TryDequeue(out var orphan))
                Adopt(orphan);
        }
        return Flow;
    }

    /// <summary>Whether flow can still run between a node and the far end of one of its arcs, off the root.</summary>
    private bool Passes(int arc, Tree side) => left[side == Tree.Source ? arc : arc ^ 1] > 0;

    /// <summary>Adds free neighbours to the node's tree; returns an arc from the source's tree to the sink's.</summary>
    private int Grow(int node)
    {
        var side = tree[node];
        for (var arc = firstArc[node]; arc != None; arc = nextArc[arc])
        {
            if (!Passes(arc, side))
                continue;
            var other = head[arc];
            if (tree[other] == Tree.Free)
            {
                tree[other] = side;
                (parent[other], distance[other], stamp[other]) = (arc ^ 1, distance[node] + 1, stamp[node]);
                active.Enqueue(other);
            }
            else if (tree[other] != side)
                return side == Tree.Source ? arc : arc ^ 1;
            else if (stamp[other] <= stamp[node] && distance[other] > distance[node] && parent[other] >= 0)
                (parent[other], distance[other], stamp[other]) = (arc ^ 1, distance[node] + 1, stamp[node]);
        }
        return None;
    }

    private void Augment(int bridge)
    {
        var (inSource, inSink) = (head[bridge ^ 1], head[bridge]);
        var most = left[bridge];
        int node;
        for (node = inSource; parent[node] != Terminal; node = head[parent[node]])
            most = Math.Min(most, left[parent[node] ^ 1]);
        most = Math.Min(most, terminal[node]);
        for (node = inSink; parent[node] != Terminal; node = head[parent[node]])
            most = Math.Min(most, left[parent[node]]);
        most = Math.Min(most, -terminal[node]);

        Push(bridge, most);
        for (node = inSource; parent[node] != Terminal; )
        {
            var arc = parent[node];
            Push(arc ^ 1, most);
            if (left[arc ^ 1] == 0)
                Orphaned(node);
            node = head[arc];
        }
        terminal[node] -= most;
        if (terminal[node] == 0)
            Orphaned(node);
        for (node = inSink; parent[node] != Terminal; )
        {
            var arc = parent[node];
            Push(arc, most);
            if (left[arc] == 0)
                Orphaned(node);
            node = head[arc];
        }
        terminal[node] += most;
        if (terminal[node] == 0)
            Orphaned(node);
        Flow += most;
    }

    private void Push(int arc, long amount)
    {
        left[arc] -= amount;
        left[arc ^ 1] += amount;
    }

    private void Orphaned(int node)
    {
        parent[node] = Orphan;
        orphans.Enqueue(node);
    }

    /// <summary>
    /// Gives a node that was cut off another parent in its own tree, the one nearest to the root, or sets it free.
    /// </summary>
    private void Adopt(int node)
    {
        var side = tree[node];
        var (best, nearest) = (None, int.MaxValue);
        for (var arc = firstArc[node]; arc != None; arc = nextArc[arc])
        {
            var other = head[arc];
            if (tree[other] == side && Passes(arc ^ 1, side) && ToRoot(other) is { } steps && steps < nearest)
                (best, nearest) = (arc, steps);
        }
        if (best != None)
        {
            (parent[node], distance[node], stamp[node]) = (best, nearest + 1, time);
            return;
        }
        for (var arc = firstArc[node]; arc != None; arc = nextArc[arc])
        {
            var other = head[arc];
            if (tree[other] != side)
                continue;
            if (Passes(arc ^ 1, side))
                active.Enqueue(other);
            if (parent[other] >= 0 && head[parent[other]] == node)
                Orphaned(other);
        }
        (tree[node], parent[node]) = (Tree.Free, None);
    }

    /// <summary>
    /// Steps from a node to its root; null when the way ends at an orphan. Marks the way with the present time.
    /// </summary>
    private int? ToRoot(int start)
    {
        var steps = 0;
        int node;
        for (node = start; stamp[node] != time; node = head[parent[node]])
        {
            steps++;
            if (parent[node] == Terminal)
                break;
            if (parent[node] < 0)
                return null;
        }
        var total = stamp[node] == time ? steps + distance[node] : steps;
        var toGo = total;
        for (node = start; stamp[node] != time; node = head[parent[node]])
        {
            (stamp[node], distance[node]) = (time, toGo--);
            if (parent[node] == Terminal)
                break;
        }
        return total;
    }
}
