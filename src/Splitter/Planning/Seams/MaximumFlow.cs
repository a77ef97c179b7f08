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

    /// <summary>To the node at its head, the next of the same node, and what can still flow through it.</summary>
    private record struct Arc(int Next, int Head, long Left);

    private readonly int[] firstArc;

    /// <summary>Each beside the one that leads back.</summary>
    private Arc[] arcs = new Arc[16];
    private int arcCount;

    /// <summary>What a node can still take from the source (positive) or give to the sink (negative).</summary>
    private readonly long[] terminal;

    private readonly Tree[] tree;

    /// <summary>The arc from a node towards its root.</summary>
    private readonly int[] parent;

    /// <summary>Steps to the root; certain where the stamp is the number of ways.</summary>
    private readonly int[] distance;
    private readonly int[] stamp;
    private readonly Queue<int> active = new();
    private readonly Queue<int> orphans = new();

    internal MaximumFlow(int nodes)
    {
        firstArc = new int[nodes];
        Array.Fill(firstArc, None);
        (terminal, tree) = (new long[nodes], new Tree[nodes]);
        parent = new int[nodes];
        Array.Fill(parent, None);
        (distance, stamp) = (new int[nodes], new int[nodes]);
    }

    /// <summary>The flow so far, and how many ways from source to sink were filled for it.</summary>
    internal long Flow { get; private set; }
    internal int Ways { get; private set; }

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
        if (arcCount == arcs.Length)
            Array.Resize(ref arcs, 2 * arcCount);
        arcs[arcCount] = new(firstArc[from], to, capacity);
        firstArc[from] = arcCount++;
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
            Ways++;
            Augment(bridge);
            while (orphans.TryDequeue(out var orphan))
                Adopt(orphan);
        }
        return Flow;
    }

    /// <summary>Whether flow can still run between a node and the far end of one of its arcs, off the root.</summary>
    private bool Passes(int arc, Tree side) => arcs[side == Tree.Source ? arc : arc ^ 1].Left > 0;

    /// <summary>Adds free neighbours to the node's tree; returns an arc from the source's tree to the sink's.</summary>
    private int Grow(int node)
    {
        var side = tree[node];
        for (var arc = firstArc[node]; arc != None; arc = arcs[arc].Next)
        {
            if (!Passes(arc, side))
                continue;
            var other = arcs[arc].Head;
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
        var (inSource, inSink) = (arcs[bridge ^ 1].Head, arcs[bridge].Head);
        var most = arcs[bridge].Left;
        int node;
        for (node = inSource; parent[node] != Terminal; node = arcs[parent[node]].Head)
            most = Math.Min(most, arcs[parent[node] ^ 1].Left);
        most = Math.Min(most, terminal[node]);
        for (node = inSink; parent[node] != Terminal; node = arcs[parent[node]].Head)
            most = Math.Min(most, arcs[parent[node]].Left);
        most = Math.Min(most, -terminal[node]);

        Push(bridge, most);
        for (node = inSource; parent[node] != Terminal; )
        {
            var arc = parent[node];
            Push(arc ^ 1, most);
            if (arcs[arc ^ 1].Left == 0)
                Orphaned(node);
            node = arcs[arc].Head;
        }
        terminal[node] -= most;
        if (terminal[node] == 0)
            Orphaned(node);
        for (node = inSink; parent[node] != Terminal; )
        {
            var arc = parent[node];
            Push(arc, most);
            if (arcs[arc].Left == 0)
                Orphaned(node);
            node = arcs[arc].Head;
        }
        terminal[node] += most;
        if (terminal[node] == 0)
            Orphaned(node);
        Flow += most;
    }

    private void Push(int arc, long amount)
    {
        arcs[arc].Left -= amount;
        arcs[arc ^ 1].Left += amount;
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
        for (var arc = firstArc[node]; arc != None; arc = arcs[arc].Next)
        {
            var other = arcs[arc].Head;
            if (tree[other] == side && Passes(arc ^ 1, side) && ToRoot(other) is { } steps && steps < nearest)
                (best, nearest) = (arc, steps);
        }
        if (best != None)
        {
            (parent[node], distance[node], stamp[node]) = (best, nearest + 1, Ways);
            return;
        }
        for (var arc = firstArc[node]; arc != None; arc = arcs[arc].Next)
        {
            var other = arcs[arc].Head;
            if (tree[other] != side)
                continue;
            if (Passes(arc ^ 1, side))
                active.Enqueue(other);
            if (parent[other] >= 0 && arcs[parent[other]].Head == node)
                Orphaned(other);
        }
        (tree[node], parent[node]) = (Tree.Free, None);
    }

    /// <summary>
    /// Steps from a node to its root; null when the way ends at an orphan. Marks it with the number of ways.
    /// </summary>
    private int? ToRoot(int start)
    {
        var steps = 0;
        int node;
        for (node = start; stamp[node] != Ways; node = arcs[parent[node]].Head)
        {
            steps++;
            if (parent[node] == Terminal)
                break;
            if (parent[node] < 0)
                return null;
        }
        var total = stamp[node] == Ways ? steps + distance[node] : steps;
        var toGo = total;
        for (node = start; stamp[node] != Ways; node = arcs[parent[node]].Head)
        {
            (stamp[node], distance[node]) = (Ways, toGo--);
            if (parent[node] == Terminal)
                break;
        }
        return total;
    }
}
