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
        (Vertices, var numbers) = Numbered(stretches);
        Edges = Merged(stretches, windings, numbers, Vertices.Length);
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

    /// <summary>All vertices, and for each stretch the number of the one where it begins.</summary>
    private static (Point[] Vertices, int[] Numbers) Numbered(List<Stretch> stretches)
    {
        // Lines are closed: where one stretch begins, another one ends.
        var (keys, order, numbers) = (new long[stretches.Count], new int[stretches.Count], new int[stretches.Count]);
        for (var i = 0; i < keys.Length; i++)
            (keys[i], order[i]) = (Key(stretches[i].From), i);
        Array.Sort(keys, order);
        var vertices = new List<Point>(keys.Length);
        for (var i = 0; i < keys.Length; i++)
        {
            if (i == 0 || keys[i] != keys[i - 1])
                vertices.Add(stretches[order[i]].From);
            numbers[order[i]] = vertices.Count - 1;
        }
        return ([.. vertices], numbers);
    }

    /// <summary>Of the same order as points.</summary>
    private static long Key(Point p) => ((long)p.X << 32) | (uint)(p.Y ^ int.MinValue);

    /// <param name="numbers">Of the vertices where stretches begin.</param>
    /// <param name="vertices">How many there are.</param>
    private static Edge[] Merged(List<Stretch> stretches, List<Winding> windings, int[] numbers, int vertices)
    {
        // Put where they begin rather than sorted: few edges lead on from one vertex.
        var starts = new int[vertices + 1];
        var all = new Edge[numbers.Length];
        for (int i = 0, first = 0; i < all.Length; i++)
        {
            var isLast = i + 1 == all.Length || stretches[i + 1].Line != stretches[i].Line;
            var (from, to) = (numbers[i], numbers[isLast ? first : i + 1]);
            var winding = windings[stretches[i].Line];
            all[i] = new()
            {
                From = Math.Min(from, to),
                To = Math.Max(from, to),
                Step = from < to ? winding : -winding,
            };
            starts[all[i].From]++;
            if (isLast)
                first = i + 1;
        }
        for (var vertex = 1; vertex <= vertices; vertex++)
            starts[vertex] += starts[vertex - 1];
        var sorted = new Edge[all.Length];
        foreach (var edge in all)
            sorted[--starts[edge.From]] = edge;
        var count = 0;
        for (var vertex = 0; vertex < vertices; vertex++)
        {
            var leading = sorted.AsSpan(starts[vertex]..starts[vertex + 1]);
            leading.Sort(static (a, b) => a.To - b.To);
            for (int i = 0, next; i < leading.Length; i = next)
            {
                var edge = leading[i];
                for (next = i + 1; next < leading.Length && leading[next].To == edge.To; next++)
                    edge = edge with { Step = edge.Step + leading[next].Step };
                if (edge.Step != default)
                    sorted[count++] = edge;
            }
        }
        return sorted[..count];
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
