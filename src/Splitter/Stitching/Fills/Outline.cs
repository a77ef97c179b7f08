using System.Collections.Immutable;

namespace Splitter.Stitching.Fills;

/// <summary>The outline of ground on a lattice, by rows: whether a straight way stays inside.</summary>
internal sealed class Outline
{
    private readonly Dictionary<int, List<(Place A, Place B)>> edges = [];

    internal Outline(IEnumerable<Place[]> rings)
    {
        foreach (var ring in rings)
            for (var i = 0; i < ring.Length; i++)
            {
                var (a, b) = (ring[i], ring[(i + 1) % ring.Length]);
                for (var row = RowOf(Math.Min(a.T, b.T)); row <= RowOf(Math.Max(a.T, b.T)); row++)
                {
                    if (!edges.TryGetValue(row, out var there))
                        edges[row] = there = [];
                    there.Add((a, b));
                }
            }
    }

    /// <summary>Whether a way leads outside anywhere.</summary>
    internal bool IsLeft(ImmutableArray<Place> way)
    {
        for (var i = 1; i < way.Length; i++)
            if (IsLeft(way[i - 1], way[i]))
                return true;
        return false;
    }

    /// <summary>Whether a straight way between two places inside, or on the outline, leads outside.</summary>
    private bool IsLeft(Place from, Place to) =>
        IsCrossed(from, to) || !Contains(new((from.T + to.T) / 2, (from.U + to.U) / 2));

    private bool IsCrossed(Place from, Place to)
    {
        for (var row = RowOf(Math.Min(from.T, to.T)); row <= RowOf(Math.Max(from.T, to.T)); row++)
            if (edges.TryGetValue(row, out var there))
                foreach (var (a, b) in there)
                    if (Side(from, to, a) != Side(from, to, b) && Side(a, b, from) != Side(a, b, to))
                        return true;
        return false;
    }

    private bool Contains(Place place)
    {
        var inside = false;
        if (edges.TryGetValue(RowOf(place.T), out var there))
            foreach (var (a, b) in there)
                if (a.T <= place.T != b.T <= place.T)
                    inside ^= a.U + ((b.U - a.U) * (place.T - a.T) / (b.T - a.T)) > place.U;
        return inside;
    }

    private static int RowOf(double t) => (int)Math.Floor(t);

    private static bool Side(Place a, Place b, Place p) => (b.U - a.U) * (p.T - a.T) > (b.T - a.T) * (p.U - a.U);
}
