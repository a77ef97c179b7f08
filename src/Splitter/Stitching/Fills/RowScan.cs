using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Fills;

/// <summary>A stretch of a row inside the ground.</summary>
/// <param name="Row">The row's number on the lattice.</param>
/// <param name="From">Its lower end along the row, µm.</param>
/// <param name="To">Its upper end, µm.</param>
/// <param name="Of">Index of the polygon it lies in.</param>
internal readonly record struct Span(int Row, double From, double To, int Of)
{
    internal double Length => To - From;

    internal double Middle => (From + To) / 2;

    /// <summary>How long the stretch is along which both lie side by side, µm.</summary>
    internal double SharedWith(Span other) => Math.Min(To, other.To) - Math.Max(From, other.From);

    /// <summary>How far a place along the row is from the span, 0 inside.</summary>
    internal double Away(double u) => Math.Max(0, Math.Max(From - u, u - To));

    /// <summary>On neighbouring rows of one polygon, with some of their length side by side.</summary>
    internal bool IsBeside(Span other) =>
        Math.Abs(Row - other.Row) == 1 && Of == other.Of && From < other.To && other.From < To;
}

/// <summary>
/// The outline from one row crossing to the next, where it leads from a span to one that does not lie beside it: ground
/// that is narrower than a row goes on there.
/// </summary>
internal sealed record Bank(int A, int B, ImmutableArray<Place> Places);

/// <summary>
/// The rows of a lattice inside a region. Every edge of the outline is crossed with the rows it spans, so that the
/// effort is that of the outline and of the result, and the crossings of a row are sorted and taken in pairs.
/// </summary>
internal sealed class RowScan
{
    /// <summary>
    /// How far the outline may bend away from a stitch between two row ends before the needle follows it, µm: a quarter
    /// of a thread's width.
    /// </summary>
    private const double Bend = 100;

    private readonly Lazy<Outline> outline;

    private RowScan(int firstRow, int[] starts, Span[] spans, List<Place[]> rings)
    {
        outline = new(() => new(rings));
        FirstRow = firstRow;
        Starts = starts;
        Spans = spans;
    }

    /// <summary>Number of the first row that is crossed.</summary>
    internal int FirstRow { get; }

    /// <summary>For each row from the first the index of its first span, and one more at the end.</summary>
    internal int[] Starts { get; }

    /// <summary>
    /// The outline between neighbouring ends of two spans beside each other, where it bends away from the straight line
    /// between them: by the spans and whether these are their upper ends. Only looked up, never listed.
    /// </summary>
    internal Dictionary<(int A, int B, bool Upper), ImmutableArray<Place>> Bends { get; } = [];

    /// <summary>By row, then along it.</summary>
    internal Span[] Spans { get; }

    /// <summary>Of the region.</summary>
    internal Outline Outline => outline.Value;

    /// <summary>In the order of the outline.</summary>
    internal List<Bank> Banks { get; } = [];

    /// <summary>How many rows there are from the first to the last.</summary>
    internal int Rows => Starts.Length - 1;

    /// <summary>The spans of a row by its number.</summary>
    internal (int From, int To) On(int row)
    {
        var i = row - FirstRow;
        return i < 0 || i >= Rows ? (0, 0) : (Starts[i], Starts[i + 1]);
    }

    /// <summary>
    /// The span of a row that holds a place along it or lies nearest to it; null when the row has none.
    /// </summary>
    internal int? Nearest(int row, double u)
    {
        var (from, to) = On(row);
        if (from == to)
            return null;
        var (low, high) = (from, to - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (Spans[middle].To < u)
                low = middle + 1;
            else
                high = middle;
        }
        return low > from && Spans[low - 1].Away(u) < Spans[low].Away(u) ? low - 1 : low;
    }

    internal static RowScan Of(Region region, Lattice lattice)
    {
        var crossings = new List<Crossing>();
        var rings = new List<Place[]>();
        for (var p = 0; p < region.Polygons.Length; p++)
            foreach (var ring in region.Polygons[p].Rings)
            {
                rings.Add(lattice.PlacesOf(ring));
                Cross(rings[^1], rings.Count - 1, p, crossings);
            }
        if (crossings.Count == 0)
            return new(0, [0], [], rings);

        var first = crossings.Min(c => c.Row);
        var order = Sorted(crossings, first, out var starts);
        var spans = new Span[order.Length / 2];
        var spanOf = new int[crossings.Count];
        for (var i = 0; i < spans.Length; i++)
        {
            var (a, b) = (crossings[order[2 * i]], crossings[order[(2 * i) + 1]]);
            // Where two polygons touch on a row, the end of one and the start of the other are at one place.
            if (a.Polygon != b.Polygon && i + 1 < spans.Length && crossings[order[(2 * i) + 2]] is var c && c.U == b.U)
                (order[(2 * i) + 1], order[(2 * i) + 2]) = (order[(2 * i) + 2], order[(2 * i) + 1]);
            spans[i] = new(a.Row, a.U, b.U, a.Polygon);
            spanOf[order[2 * i]] = spanOf[order[(2 * i) + 1]] = i;
        }
        var scan = new RowScan(first, [.. starts.Select(s => s / 2)], spans, rings);
        scan.FindBanks(crossings, rings, spanOf, lattice.Spacing);
        return scan;
    }

    /// <summary>
    /// Half-open edges: a vertex on a row counts once, so every row is crossed an even number of times.
    /// </summary>
    private static void Cross(Place[] ring, int ringIndex, int polygon, List<Crossing> crossings)
    {
        for (var i = 0; i < ring.Length; i++)
        {
            var (a, b) = (ring[i], ring[(i + 1) % ring.Length]);
            var (first, last) = ((int)Math.Ceiling(Math.Min(a.T, b.T)), (int)Math.Ceiling(Math.Max(a.T, b.T)) - 1);
            // In the direction of the ring, for the banks.
            for (var n = 0; n <= last - first; n++)
            {
                var row = a.T < b.T ? first + n : last - n;
                crossings.Add(new(row, a.U + ((b.U - a.U) * ((row - a.T) / (b.T - a.T))), polygon, ringIndex, i));
            }
        }
    }

    /// <summary>Indexes of the crossings by row, then along it.</summary>
    private static int[] Sorted(List<Crossing> crossings, int first, out int[] starts)
    {
        starts = new int[crossings.Max(c => c.Row) - first + 2];
        foreach (var c in crossings)
            starts[c.Row - first + 1]++;
        for (var i = 1; i < starts.Length; i++)
            starts[i] += starts[i - 1];
        var (order, keys) = (new int[crossings.Count], new double[crossings.Count]);
        int[] next = [.. starts];
        for (var i = 0; i < order.Length; i++)
            order[next[crossings[i].Row - first]++] = i;
        for (var i = 0; i < order.Length; i++)
            keys[i] = crossings[order[i]].U;
        for (var i = 1; i < starts.Length; i++)
            Array.Sort(keys, order, starts[i - 1], starts[i] - starts[i - 1]);
        return order;
    }

    private void FindBanks(List<Crossing> crossings, List<Place[]> rings, int[] spanOf, double spacing)
    {
        for (int from = 0, to; from < crossings.Count; from = to)
        {
            for (to = from + 1; to < crossings.Count && crossings[to].Ring == crossings[from].Ring; )
                to++;
            for (var i = from; i < to; i++)
            {
                var j = i + 1 < to ? i + 1 : from;
                var (a, b, ring) = (crossings[i], crossings[j], rings[crossings[i].Ring]);
                var (spanA, spanB) = (spanOf[i], spanOf[j]);
                var beside = Spans[spanA].IsBeside(Spans[spanB]);
                if (spanA == spanB || (beside && (a.Edge == b.Edge || Math.Abs(a.U - b.U) < spacing)))
                    continue;
                var places = ImmutableArray.CreateBuilder<Place>();
                places.Add(new(a.Row, a.U));
                for (var e = a.Edge; e != b.Edge; e = (e + 1) % ring.Length)
                    places.Add(ring[(e + 1) % ring.Length]);
                places.Add(new(b.Row, b.U));
                if (!beside)
                    Banks.Add(new(spanA, spanB, places.ToImmutable()));
                else if (Bent(places, spacing))
                {
                    var upper = Spans[spanA].To == a.U;
                    Bends.TryAdd((spanA, spanB, upper), places.ToImmutable());
                    places.Reverse();
                    Bends.TryAdd((spanB, spanA, upper), places.ToImmutable());
                }
            }
        }
    }

    /// <summary>
    /// A place lies farther than <see cref="Bend"/> from the straight line between the first and the last.
    /// </summary>
    private static bool Bent(ImmutableArray<Place>.Builder places, double spacing)
    {
        var (a, b) = (places[0], places[places.Count - 1]);
        var (along, across) = (b.U - a.U, (b.T - a.T) * spacing);
        var length = Math.Sqrt((along * along) + (across * across));
        return places.Any(p => Math.Abs(((p.U - a.U) * across) - ((p.T - a.T) * spacing * along)) / length > Bend);
    }

    private readonly record struct Crossing(int Row, double U, int Polygon, int Ring, int Edge);
}
