namespace Splitter.Geometry.Arrangements;

/// <summary>
/// Lines that meet at their vertices alone, each edge once however many run along it, and how often lines wind around
/// the ground on either side of it. A line is swept over the plane, from left to right (Bentley and Ottmann 1979): the
/// edges that it meets stand in order, and a vertex is looked for among them by halves.
/// </summary>
internal sealed class Arrangement
{
    /// <summary>Edges that the sweeping line meets, with y rising; a line along it is met from below.</summary>
    private readonly List<int> met = [];

    private Arrangement(List<Stretch> stretches, List<Winding> windings)
    {
        var keys = Distinct(stretches);
        Vertices = Array.ConvertAll(keys, key => new Point((int)(key >> 32), (int)key ^ int.MinValue));
        Edges = Merged(stretches, windings, keys);
    }

    /// <summary>By x, then y.</summary>
    internal Point[] Vertices { get; }

    /// <summary>By the vertex from which they lead to a later one.</summary>
    internal Edge[] Edges { get; }

    /// <param name="isInside">By how often lines wind around ground, whether it is asked for.</param>
    internal static Region Ground(Outlines lines, Func<Winding, bool> isInside)
    {
        var arrangement = new Arrangement(SnapRounding.Of(lines), lines.Windings);
        arrangement.Sweep(isInside);
        return new Boundary(arrangement).Ground();
    }

    private static long[] Distinct(List<Stretch> stretches)
    {
        // Lines are closed: where one stretch begins, another one ends.
        long[] all = [.. stretches.Select(s => Key(s.From))];
        Array.Sort(all);
        var count = 0;
        for (var i = 0; i < all.Length; i++)
            if (i == 0 || all[i] != all[i - 1])
                all[count++] = all[i];
        return all[..count];
    }

    /// <summary>Of the same order as points.</summary>
    private static long Key(Point p) => ((long)p.X << 32) | (uint)(p.Y ^ int.MinValue);

    /// <param name="vertices">Their keys.</param>
    private static Edge[] Merged(List<Stretch> stretches, List<Winding> windings, long[] vertices)
    {
        var edges = new List<Edge>(stretches.Count);
        var keys = new long[stretches.Count];
        var added = new Winding[stretches.Count];
        for (var i = 0; i < keys.Length; i++)
        {
            var (from, to) = (NumberOf(stretches[i].From), NumberOf(stretches[i].To));
            var winding = windings[stretches[i].Line];
            keys[i] = ((long)Math.Min(from, to) << 32) | (uint)Math.Max(from, to);
            added[i] = from < to ? winding : -winding;
        }
        Array.Sort(keys, added);
        for (int i = 0, next; i < keys.Length; i = next)
        {
            var step = added[i];
            for (next = i + 1; next < keys.Length && keys[next] == keys[i]; next++)
                step += added[next];
            if (step != default)
                edges.Add(
                    new()
                    {
                        From = (int)(keys[i] >> 32),
                        To = (int)keys[i],
                        Step = step,
                    }
                );
        }
        return [.. edges];

        int NumberOf(Point vertex) => Array.BinarySearch(vertices, Key(vertex));
    }

    private void Sweep(Func<Winding, bool> isInside)
    {
        var next = 0;
        for (var vertex = 0; vertex < Vertices.Length; vertex++)
        {
            var place = Below(Vertices[vertex]);
            var ended = place;
            while (ended < met.Count && Edges[met[ended]].To == vertex)
                ended++;
            var first = next;
            while (next < Edges.Length && Edges[next].From == vertex)
                next++;
            if (next - first > 1)
                Edges.AsSpan(first..next).Sort(BySlope);
            for (var i = first; i < next; i++)
            {
                ref var edge = ref Edges[i];
                var under =
                    i > first ? i - 1
                    : place > 0 ? met[place - 1]
                    : -1;
                var below = under < 0 ? default : Edges[under].Above;
                edge.Above = below + edge.Step;
                (edge.IsInsideBelow, edge.IsInsideAbove) = (isInside(below), isInside(edge.Above));
                edge.Under =
                    under < 0 ? -1
                    : Edges[under].IsBoundary ? under
                    : Edges[under].Under;
            }
            Exchange(place, ended - place, first, next - first);
        }
    }

    /// <summary>How many of the edges that are met lie below a vertex.</summary>
    private int Below(Point vertex)
    {
        var (low, high) = (0, met.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            ref var edge = ref Edges[met[middle]];
            (low, high) = Side(Vertices[edge.From], Vertices[edge.To], vertex) > 0 ? (middle + 1, high) : (low, middle);
        }
        return low;
    }

    /// <summary>In the place of edges that end those that begin, which have consecutive numbers.</summary>
    private void Exchange(int place, int ended, int first, int begun)
    {
        if (ended > begun)
            met.RemoveRange(place + begun, ended - begun);
        for (var i = 0; i < begun; i++)
            if (i < ended)
                met[place + i] = first + i;
            else
                met.Insert(place + i, first + i);
    }

    private int BySlope(Edge a, Edge b) => -Side(Vertices[a.From], Vertices[a.To], Vertices[b.To]);

    /// <summary>On which side of a line a point lies: 1 on its left as seen with y up, -1 on its right.</summary>
    internal static int Side(Point from, Point to, Point at)
    {
        var (x, y) = ((double)to.X - from.X, (double)to.Y - from.Y);
        var (left, right) = (x * ((double)at.Y - from.Y), y * ((double)at.X - from.X));
        // Differences are exact, products rounded once each.
        return Math.Abs(left - right) > 1e-15 * (Math.Abs(left) + Math.Abs(right))
            ? Math.Sign(left - right)
            : Int128.Sign(
                ((Int128)((long)to.X - from.X) * ((long)at.Y - from.Y))
                    - ((Int128)((long)to.Y - from.Y) * ((long)at.X - from.X))
            );
    }
}

/// <summary>An edge between two vertices, from the one that comes first.</summary>
internal record struct Edge
{
    /// <summary>Number of a vertex.</summary>
    internal int From { get; init; }

    internal int To { get; init; }

    /// <summary>
    /// What is added to the winding number from below to above: with y rising, across a vertical edge with x falling.
    /// </summary>
    internal Winding Step { get; init; }

    internal Winding Above { get; set; }

    internal bool IsInsideBelow { get; set; }

    internal bool IsInsideAbove { get; set; }

    /// <summary>
    /// The boundary of what is asked for that lies next below its beginning; -1 where there is none. Below an edge that
    /// is no boundary it is what lies below that one's own beginning: the same ground, in one piece with it.
    /// </summary>
    internal int Under { get; set; }

    internal readonly bool IsBoundary => IsInsideBelow != IsInsideAbove;
}
