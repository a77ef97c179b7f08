using System.Collections.Immutable;

namespace Splitter.Planning.Order;

/// <summary>
/// Good orders of many fields: from several starts the best, then single fields moved to other places in it and set by
/// other donors, as long as that helps and the work allows.
/// </summary>
internal sealed class OrderSearch
{
    /// <summary>
    /// Columns gone through before the search ends with what it has; no clock, so that every machine ends alike. About
    /// a fifth of a second.
    /// </summary>
    private const long MostWork = 80_000_000;

    private readonly OrderTask task;
    private readonly PartialOrder partial;

    internal OrderSearch(OrderTask task)
    {
        this.task = task;
        partial = new(task);
    }

    /// <summary>Columns that have been gone through.</summary>
    internal long Work => partial.Work;

    /// <summary>The best order that was found; null when no order reaches every field.</summary>
    internal static FoundOrder? Search(OrderTask task)
    {
        var search = new OrderSearch(task);
        FoundOrder? best = null;
        foreach (var start in search.Starts())
            if (best is null || start.Score < best.Score)
                best = start;
        return best is null ? null : search.Improved(best);
    }

    internal IEnumerable<FoundOrder> Starts()
    {
        // Always the field that leaves the seams so far best.
        if (Built(open => open.MinBy(o => (o.Score, o.Field))) is not { } greedy)
            yield break;
        yield return greedy;
        // Always the field that lies best itself: errors grow outwards evenly (Dijkstra 1959).
        if (Built(open => open.MinBy(o => (o.Score.Astray, o.Field))) is { } outwards)
            yield return outwards;
        var centres = task.Layout.Fields.Select(f => f.Centre).ToArray();
        var first = centres[task.First];
        // Rows from the first one's up and down, and rings around it.
        if (
            Built(open => open.MinBy(o => (Math.Abs(centres[o.Field].Y - first.Y), Away(o.Field), o.Field))) is { } rows
        )
            yield return rows;
        if (
            Built(open => open.MinBy(o => (Math.Abs(centres[o.Field].X - first.X), Away(o.Field), o.Field))) is
            { } columns
        )
            yield return columns;
        if (Built(open => open.MinBy(o => (Away(o.Field), o.Field))) is { } rings)
            yield return rings;

        double Away(int field) => centres[field].DistanceTo(first);
    }

    private sealed record Option(int Field, ImmutableArray<int> Donors, Score Score);

    private FoundOrder? Built(Func<List<Option>, Option?> choose)
    {
        partial.Keep(1);
        // Of hundreds of fields few are near the one that came in last: the others are set as they were.
        var ways = new List<(ImmutableArray<int>, Score)>?[task.Count];
        while (partial.Order.Count < task.Count)
        {
            var open = new List<Option>();
            for (var field = 0; field < task.Count; field++)
                if (!partial.Holds(field) && partial.Best(ways[field] ??= partial.Ways(field)) is var (donors, score))
                    open.Add(new(field, donors, score));
            if (choose(open) is not { } next)
                return null;
            partial.Add(next.Field, next.Donors);
            for (var field = 0; field < task.Count; field++)
                if (task.IsNear(field, next.Field))
                    ways[field] = null;
        }
        return FoundOrder.Of(partial);
    }

    private FoundOrder Improved(FoundOrder best)
    {
        while (Better(best) is { } better)
            best = better;
        return best;
    }

    /// <summary>The first better order that a single change makes.</summary>
    private FoundOrder? Better(FoundOrder known)
    {
        var fields = known.Fields;
        for (var from = 1; from < fields.Length; from++)
        {
            foreach (var donors in task.DonorSets(fields[from], f => fields.IndexOf(f) < from))
                if (Followed(known, from, fields, known.Donors.SetItem(from, donors)) is { } better)
                    return better;
            for (var to = 1; to < fields.Length; to++)
                if (to != from && Followed(known, Math.Min(from, to), Moved(fields, from, to), null) is { } better)
                    return better;
        }
        return null;
    }

    private static ImmutableArray<int> Moved(ImmutableArray<int> fields, int from, int to) =>
        fields.RemoveAt(from).Insert(to, fields[from]);

    /// <summary>The order with fields changed from a place on, if that is better than what is known.</summary>
    /// <param name="donors">For each place; null takes whatever meets those before best.</param>
    private FoundOrder? Followed(
        FoundOrder known,
        int from,
        ImmutableArray<int> fields,
        ImmutableArray<ImmutableArray<int>>? donors
    )
    {
        if (Work > MostWork)
            return null;
        Restore(known, from);
        for (var place = from; place < fields.Length; place++)
        {
            var set = donors is { } given ? given[place] : partial.Best(fields[place])?.Donors;
            if (set is not { } taken)
                return null;
            partial.Add(fields[place], taken);
            if (!(partial.Score < known.Score))
                return null;
        }
        return FoundOrder.Of(partial);
    }

    /// <summary>What is known, up to a place.</summary>
    private void Restore(FoundOrder known, int count)
    {
        var same = 0;
        while (
            same < Math.Min(count, partial.Order.Count)
            && partial.Order[same] == known.Fields[same]
            && partial.Donors[same].AsSpan().SequenceEqual(known.Donors[same].AsSpan())
        )
            same++;
        partial.Keep(same);
        for (var place = same; place < count; place++)
            partial.Add(known.Fields[place], known.Donors[place]);
    }
}
