namespace Splitter.Stitching.Fills;

/// <summary>Where the needle is: a span and the place along it.</summary>
internal readonly record struct Stand(int Span, double U);

/// <summary>
/// Shortest ways through the sections of a ground (Dijkstra 1959), measured from link to link. A section is entered
/// once, where it is reached first: exact enough for hidden travel, and the effort is that of the links looked at.
/// </summary>
internal sealed class Router(FillGround ground, double spacing)
{
    private readonly double[] distance = new double[ground.Sections];
    private readonly Link[] via = new Link[ground.Sections];
    private readonly Stand[] entry = new Stand[ground.Sections];
    private readonly int[] seen = new int[ground.Sections];
    private readonly int[] settled = new int[ground.Sections];
    private readonly PriorityQueue<int, (double, int)> queue = new();
    private int search;

    /// <summary>
    /// The nearest section that is looked for, by ways through sections that may be passed; null when none is reached.
    /// </summary>
    internal int? Nearest(Stand from, Func<int, bool> mayPass, Func<int, bool> isGoal)
    {
        search++;
        queue.Clear();
        Reach(ground.SectionOf[from.Span], 0, from, default);
        while (queue.TryDequeue(out var section, out var priority))
        {
            if (settled[section] == search)
                continue;
            settled[section] = search;
            if (isGoal(section))
                return section;
            foreach (var link in ground.LinksOf(section))
            {
                var next = ground.SectionOf[link.ToSpan];
                if (settled[next] == search || !mayPass(next))
                    continue;
                var to = ground.Scan.Spans[link.ToSpan];
                var u = Math.Clamp(entry[section].U, to.From, to.To);
                Reach(next, priority.Item1 + Length(entry[section], new(link.FromSpan, u)), new(link.ToSpan, u), link);
            }
        }
        return null;
    }

    /// <summary>How far a section that the last search reached is from its start, µm.</summary>
    internal double DistanceTo(int section) => distance[section];

    /// <summary>The link by which the last search came to a section; none for the first.</summary>
    internal Link? Via(int section) => via[section] == default ? null : via[section];

    /// <summary>The spans to walk from the start of the last search to a span of a section that it reached.</summary>
    internal List<int> Walk(Stand from, int toSpan)
    {
        var spans = new List<int>();
        var (span, first) = (toSpan, ground.SectionOf[from.Span]);
        while (ground.SectionOf[span] is var section && section != first)
        {
            Along(span, via[section].ToSpan);
            span = via[section].FromSpan;
        }
        Along(span, from.Span);
        spans.Reverse();
        return spans;

        // Within one section, both ends included.
        void Along(int start, int end)
        {
            var all = ground.SpansOf(ground.SectionOf[start]);
            var (i, last) = (ground.IndexIn[start], ground.IndexIn[end]);
            for (; i != last; i += Math.Sign(last - i))
                spans.Add(all[i]);
            spans.Add(all[last]);
        }
    }

    private void Reach(int section, double length, Stand at, Link link)
    {
        if (seen[section] == search && distance[section] <= length)
            return;
        (seen[section], distance[section], entry[section], via[section]) = (search, length, at, link);
        queue.Enqueue(section, (length, section));
    }

    private double Length(Stand a, Stand b)
    {
        var (rows, along) = (ground.Scan.Spans[a.Span].Row - ground.Scan.Spans[b.Span].Row, a.U - b.U);
        return Math.Sqrt((rows * spacing * (rows * spacing)) + (along * along));
    }
}
