using System.Runtime.InteropServices;

namespace Splitter.Planning.Seams;

/// <summary>What a link between two nodes asks.</summary>
internal enum LinkKind : byte
{
    /// <summary>Costs its weight when the two have different fields.</summary>
    Apart,

    /// <summary>
    /// The first lies over the second: costs its weight when the second is sewn later and so covers the first.
    /// </summary>
    Over,
}

/// <summary>What is asked of two nodes.</summary>
internal readonly record struct Link(int A, int B, long Weight, LinkKind Kind)
{
    /// <summary>What it costs for the fields of its two ends.</summary>
    internal long Cost(int first, int second) =>
        Kind == LinkKind.Over
            ? second > first
                ? Weight
                : 0
            : first != second
                ? Weight
                : 0;
}

/// <summary>
/// Who gets what, before it is decided: nodes (cells of ground, and shapes that stay whole), for each the fields that
/// can have it, and what a choice costs. Fields are numbered in sewing order; costs are whole numbers so that equal is
/// equal.
/// </summary>
internal sealed class LabelProblem
{
    private readonly List<Link> links = [];

    /// <summary>
    /// Null until it is asked for. Threads may ask at once: each finds all of it, or makes the same anew.
    /// </summary>
    private NodeLinks? byNode;

    /// <summary>The links of one node after the other.</summary>
    /// <param name="Starts">For each node where its links begin; one more stands for the end.</param>
    /// <param name="Links">Of each node rising.</param>
    private sealed record NodeLinks(int[] Starts, int[] Links);

    /// <param name="fields">For each node the fields that can have it, rising.</param>
    internal LabelProblem(int[][] fields)
    {
        Fields = fields;
        Own = new long[fields.Length][];
    }

    /// <summary>For each node the fields that can have it, rising.</summary>
    internal int[][] Fields { get; }

    /// <summary>
    /// For each node what each of its fields costs, in the order of <see cref="Fields"/>; null for nothing.
    /// </summary>
    internal long[]?[] Own { get; }

    internal ReadOnlySpan<Link> Links => CollectionsMarshal.AsSpan(links);

    internal int NodeCount => Fields.Length;

    internal void AddOwn(int node, int field, long cost)
    {
        var place = Array.IndexOf(Fields[node], field);
        if (place >= 0)
            (Own[node] ??= new long[Fields[node].Length])[place] += cost;
    }

    internal void AddLink(int a, int b, long weight, LinkKind kind) => Add(new(a, b, weight, kind));

    internal void AddLinks(IEnumerable<Link> some)
    {
        foreach (var link in some)
            Add(link);
    }

    private void Add(Link link)
    {
        // Where neither has a choice there is nothing to decide.
        if (link.Weight > 0 && link.A != link.B && Fields[link.A].Length + Fields[link.B].Length > 2)
            links.Add(link);
        byNode = null;
    }

    /// <summary>The links of a node. They are put in order at the first question after one was added.</summary>
    internal ReadOnlySpan<int> LinksOf(int node)
    {
        var (starts, all) = byNode ??= Index();
        return all.AsSpan(starts[node]..starts[node + 1]);
    }

    /// <summary>Which fields can have the same node, or the two ends of a link; by both of them.</summary>
    internal bool[,] Beside()
    {
        var count = Fields.Max(fields => fields.Length == 0 ? 0 : fields[^1] + 1);
        var beside = new bool[count, count];
        int[] before = [],
            others = [];
        foreach (var fields in Fields)
            Note(fields, fields);
        foreach (ref readonly var link in Links)
            Note(Fields[link.A], Fields[link.B]);
        return beside;

        void Note(int[] some, int[] more)
        {
            // Neighbouring cells share their lists.
            if (some == before && more == others)
                return;
            (before, others) = (some, more);
            foreach (var one in some)
            foreach (var other in more)
                beside[one, other] = beside[other, one] = true;
        }
    }

    internal long OwnCost(int node, int field) =>
        Own[node] is { } costs ? costs[Array.IndexOf(Fields[node], field)] : 0;

    /// <summary>What a whole choice costs.</summary>
    internal long Cost(ReadOnlySpan<int> choice)
    {
        long sum = 0;
        for (var node = 0; node < NodeCount; node++)
            if (Fields[node].Length > 0)
                sum += OwnCost(node, choice[node]);
        foreach (ref readonly var link in Links)
            sum += link.Cost(choice[link.A], choice[link.B]);
        return sum;
    }

    private NodeLinks Index()
    {
        var (index, linksOf) = (new int[NodeCount + 1], new int[2 * links.Count]);
        foreach (var (a, b, _, _) in links)
        {
            index[a]++;
            index[b]++;
        }
        for (var node = 1; node <= NodeCount; node++)
            index[node] += index[node - 1];
        for (var i = links.Count - 1; i >= 0; i--)
        {
            linksOf[--index[links[i].A]] = i;
            linksOf[--index[links[i].B]] = i;
        }
        return new(index, linksOf);
    }
}
