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

    /// <summary>Those of one line, from the left.</summary>
    private readonly List<(int From, int To)> ordered = [];

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
        ordered.Clear();
        for (var i = last[line]; i != None; i = links[i].Next)
            ordered.Add((links[i].From, links[i].To));
        last[line] = None;
        var spans = CollectionsMarshal.AsSpan(ordered);
        if (spans.Length < 2)
            return spans;
        spans.Sort(static (a, b) => a.From.CompareTo(b.From));
        var apart = 0;
        foreach (var (from, to) in spans[1..])
            if (from <= spans[apart].To)
                spans[apart].To = Math.Max(spans[apart].To, to);
            else
                spans[++apart] = (from, to);
        return spans[..(apart + 1)];
    }

    /// <summary>After all lines are taken.</summary>
    internal void Forget()
    {
        links.Clear();
        (Top, Bottom) = (int.MaxValue, -1);
    }
}
