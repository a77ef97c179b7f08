using System.Runtime.InteropServices;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// Stretches of scan lines that are to be filled, each line's as a union. What a pen draws overlaps with what it drew
/// just before: that is joined at once, and little is left to be put in order.
/// </summary>
internal sealed class Spans
{
    /// <param name="Next">The span of the same line that was added before; none is negative.</param>
    private record struct Link(int From, int To, int Next);

    private const int None = -1;

    private readonly List<Link> links = [];

    /// <summary>For each line its last span.</summary>
    private readonly int[] last;

    /// <summary>Those of one line: where each begins, above where it ends, so that they are numbers to sort.</summary>
    private readonly List<long> added = [];

    /// <summary>The same joined, from the left.</summary>
    private readonly List<(int From, int To)> apart = [];

    internal Spans(int lines)
    {
        last = new int[lines];
        Array.Fill(last, None);
    }

    /// <summary>First and last line that has any.</summary>
    internal int Top { get; private set; } = int.MaxValue;
    internal int Bottom { get; private set; } = -1;

    internal void Add(int line, int from, int to)
    {
        ref var latest = ref last[line];
        if (latest != None)
        {
            ref var before = ref CollectionsMarshal.AsSpan(links)[latest];
            if (from <= before.To && to >= before.From)
            {
                (before.From, before.To) = (Math.Min(before.From, from), Math.Max(before.To, to));
                return;
            }
        }
        links.Add(new(from, to, latest));
        latest = links.Count - 1;
        (Top, Bottom) = (Math.Min(Top, line), Math.Max(Bottom, line));
    }

    /// <summary>Takes all of a line; they lie apart, the leftmost first.</summary>
    internal ReadOnlySpan<(int From, int To)> Take(int line)
    {
        added.Clear();
        var all = CollectionsMarshal.AsSpan(links);
        for (var i = last[line]; i != None; i = all[i].Next)
            added.Add(((long)all[i].From << 32) | (uint)all[i].To);
        last[line] = None;
        var places = CollectionsMarshal.AsSpan(added);
        // Mostly they were added from the left.
        places.Reverse();
        places.Sort();
        apart.Clear();
        foreach (var place in places)
        {
            var (from, to) = ((int)(place >> 32), (int)place);
            if (apart.Count > 0 && apart[^1] is var before && from <= before.To)
                apart[^1] = (before.From, Math.Max(before.To, to));
            else
                apart.Add((from, to));
        }
        return CollectionsMarshal.AsSpan(apart);
    }

    /// <summary>After all lines are taken.</summary>
    internal void Forget()
    {
        links.Clear();
        (Top, Bottom) = (int.MaxValue, -1);
    }
}
