using System.Collections.Immutable;

namespace Splitter.Stitching.Fills;

/// <summary>A way from a span to another one, of another section.</summary>
internal readonly record struct Link(int FromSpan, int ToSpan);

/// <summary>
/// Rows of a piece of ground in sections: runs of spans, row after row, that are sewn to and fro without leaving the
/// ground. Links lead from section to section; all sections of one
/// polygon hang together.
/// </summary>
/// <remarks>
/// With <c>throughBranches</c>, where the ground divides or joins, a section goes on along the stretch that lies side
/// by side longest, and only the others end or start there: close rows are then sewn with the least travel. Open rows
/// gain nothing by it.
/// </remarks>
internal sealed class FillGround
{
    private readonly int[] order;
    private readonly int[] sectionStarts;
    private readonly int[] linkStarts;
    private readonly Link[] links;
    private readonly Dictionary<(int, int), Bank> banks = [];

    internal FillGround(RowScan scan, bool throughBranches)
    {
        Scan = scan;
        var (up, down) = Besides(scan);
        (order, sectionStarts) = Divide(scan, up, down, throughBranches);
        Branches = [.. up.Zip(down, (u, d) => u.Count > 1 || d.Count > 1)];
        SectionOf = new int[order.Length];
        IndexIn = new int[order.Length];
        for (var s = 0; s < Sections; s++)
        for (var i = sectionStarts[s]; i < sectionStarts[s + 1]; i++)
            (SectionOf[order[i]], IndexIn[order[i]]) = (s, i - sectionStarts[s]);
        (links, linkStarts) = Sorted(FindLinks(scan, up));
    }

    internal RowScan Scan { get; }

    /// <summary>How many there are.</summary>
    internal int Sections => sectionStarts.Length - 1;

    /// <summary>The section of each span.</summary>
    internal int[] SectionOf { get; }

    /// <summary>For each span whether more than one lie beside it on a neighbouring row.</summary>
    internal bool[] Branches { get; }

    /// <summary>The place of each span in its section.</summary>
    internal int[] IndexIn { get; }

    /// <summary>Spans of a section by ascending row.</summary>
    internal ReadOnlySpan<int> SpansOf(int section) =>
        order.AsSpan(sectionStarts[section], sectionStarts[section + 1] - sectionStarts[section]);

    /// <summary>Ways out of a section.</summary>
    internal ReadOnlySpan<Link> LinksOf(int section) =>
        links.AsSpan(linkStarts[section], linkStarts[section + 1] - linkStarts[section]);

    /// <summary>
    /// The outline that leads between two spans that do not lie beside each other, in that direction.
    /// </summary>
    internal ImmutableArray<Place> BankBetween(int from, int to) =>
        banks.TryGetValue((from, to), out var bank) ? bank.Places : [.. banks[(to, from)].Places.Reverse()];

    /// <summary>
    /// For each span how many lie beside it on the next and on the previous row, and the first of each.
    /// </summary>
    private static ((int Count, int First)[] Up, (int Count, int First)[] Down) Besides(RowScan scan)
    {
        var (up, down) = (new (int Count, int First)[scan.Spans.Length], new (int Count, int First)[scan.Spans.Length]);
        for (var row = 1; row < scan.Rows; row++)
        {
            var (i, j) = (scan.Starts[row - 1], scan.Starts[row]);
            while (i < scan.Starts[row] && j < scan.Starts[row + 1])
            {
                var (a, b) = (scan.Spans[i], scan.Spans[j]);
                if (a.IsBeside(b))
                {
                    up[i] = up[i].Count == 0 ? (1, j) : (up[i].Count + 1, up[i].First);
                    down[j] = down[j].Count == 0 ? (1, i) : (down[j].Count + 1, down[j].First);
                }
                if (a.To < b.To)
                    i++;
                else
                    j++;
            }
        }
        return (up, down);
    }

    private static (int[] Order, int[] Starts) Divide(
        RowScan scan,
        (int Count, int First)[] up,
        (int Count, int First)[] down,
        bool throughBranches
    )
    {
        var (order, starts) = (new List<int>(scan.Spans.Length), new List<int>());
        for (var i = 0; i < scan.Spans.Length; i++)
        {
            if (Partner(down, i) is { } below && Partner(up, below) == i)
                continue;
            starts.Add(order.Count);
            order.Add(i);
            for (var at = i; Partner(up, at) is { } above && Partner(down, above) == at; order.Add(at))
                at = above;
        }
        starts.Add(order.Count);
        return ([.. order], [.. starts]);

        // The span beside this one with which it shares most; of equals the first.
        int? Partner((int Count, int First)[] beside, int span)
        {
            var (best, longest) = ((int?)null, 0.0);
            if (beside[span].Count > 1 && !throughBranches)
                return null;
            for (var (j, n) = (beside[span].First, beside[span].Count); n > 0; j++)
                if (scan.Spans[span].IsBeside(scan.Spans[j]))
                {
                    n--;
                    if (scan.Spans[span].SharedWith(scan.Spans[j]) is var shared && shared > longest)
                        (best, longest) = (j, shared);
                }
            return best;
        }
    }

    private IEnumerable<Link> FindLinks(RowScan scan, (int Count, int First)[] up)
    {
        for (var i = 0; i < up.Length; i++)
        for (var (j, n) = (up[i].First, up[i].Count); n > 0; j++)
            if (scan.Spans[i].IsBeside(scan.Spans[j]))
            {
                n--;
                if (SectionOf[i] != SectionOf[j])
                    yield return new(i, j);
            }
        foreach (var bank in scan.Banks)
            if (SectionOf[bank.A] != SectionOf[bank.B] && !banks.ContainsKey((bank.B, bank.A)))
                if (banks.TryAdd((bank.A, bank.B), bank))
                    yield return new(bank.A, bank.B);
    }

    /// <summary>Links in both directions, by the section that they lead out of.</summary>
    private (Link[] Links, int[] Starts) Sorted(IEnumerable<Link> found)
    {
        Link[] both = [.. found.SelectMany(l => new[] { l, new Link(l.ToSpan, l.FromSpan) })];
        both = [.. both.OrderBy(l => SectionOf[l.FromSpan])]; // A stable sort.
        var starts = new int[Sections + 1];
        foreach (var link in both)
            starts[SectionOf[link.FromSpan] + 1]++;
        for (var i = 1; i < starts.Length; i++)
            starts[i] += starts[i - 1];
        return (both, starts);
    }
}
