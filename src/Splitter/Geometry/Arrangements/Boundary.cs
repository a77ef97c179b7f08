using System.Runtime.InteropServices;

namespace Splitter.Geometry.Arrangements;

/// <summary>
/// Walks along the edges of an <see cref="Arrangement"/> between what is asked for and what is not, the former on the
/// left (as seen with y up), and makes polygons of them. Rings that touch at a vertex are rings of their own.
/// </summary>
internal sealed class Boundary
{
    private const int None = -1;

    private readonly Arrangement arrangement;

    /// <summary>For each vertex one edge that leads away from it, and for each edge another one.</summary>
    private readonly int[] firstOut;
    private readonly int[] nextOut;

    /// <summary>The ring of each edge.</summary>
    private readonly int[] ringOf;

    /// <summary>Where a vertex stands on the way.</summary>
    private readonly int[] placeOnWay;
    private readonly List<int> way = [];
    private readonly List<Found> rings = [];

    internal Boundary(Arrangement arrangement)
    {
        this.arrangement = arrangement;
        var edges = arrangement.Edges;
        (firstOut, placeOnWay) = (new int[arrangement.Vertices.Length], new int[arrangement.Vertices.Length]);
        (nextOut, ringOf) = (new int[edges.Length], new int[edges.Length]);
        Array.Fill(firstOut, None);
        Array.Fill(placeOnWay, None);
        Array.Fill(ringOf, None);
        for (var edge = 0; edge < edges.Length; edge++)
            if (edges[edge].IsBoundary)
                (nextOut[edge], firstOut[Start(edge)]) = (firstOut[Start(edge)], edge);
    }

    internal Region Ground()
    {
        for (var edge = 0; edge < ringOf.Length; edge++)
            if (ringOf[edge] == None && arrangement.Edges[edge].IsBoundary)
                Walk(edge);
        // A hole lies in the ring below its first vertex, or in the same as that one: which began before.
        var shells = new int[rings.Count];
        Array.Fill(shells, None);
        foreach (var ring in Enumerable.Range(0, rings.Count).OrderBy(r => rings[r].First))
        {
            var shell = ring;
            while (!rings[shell].IsShell)
            {
                shell = ringOf[arrangement.Edges[rings[shell].Lowest].Under];
                shell = shells[shell] == None ? shell : shells[shell];
            }
            shells[ring] = shell;
        }
        return Region.Sorted(
            Enumerable
                .Range(0, rings.Count)
                .GroupBy(r => shells[r])
                .Select(group => new Polygon(
                    rings[group.Key].Ring,
                    [.. group.Where(r => r != group.Key).Select(r => rings[r].Ring).OrderBy(r => r.Points[0])]
                ))
        );
    }

    private int Start(int edge) =>
        arrangement.Edges[edge].IsInsideAbove ? arrangement.Edges[edge].From : arrangement.Edges[edge].To;

    private int End(int edge) =>
        arrangement.Edges[edge].IsInsideAbove ? arrangement.Edges[edge].To : arrangement.Edges[edge].From;

    /// <summary>Goes round from an edge to itself; where it comes by a vertex again, a ring is closed.</summary>
    private void Walk(int first)
    {
        var edge = first;
        do
        {
            var at = Start(edge);
            if (placeOnWay[at] != None)
                Close(placeOnWay[at]);
            placeOnWay[at] = way.Count;
            way.Add(edge);
            // None yet, but no edge that leads on any more.
            ringOf[edge] = int.MaxValue;
            edge = Next(edge);
        } while (edge != first);
        Close(0);
    }

    /// <summary>The edge along the same ground, that is the sharpest turn to the left.</summary>
    private int Next(int edge)
    {
        var (back, at) = (arrangement.Vertices[Start(edge)], End(edge));
        var next = firstOut[at];
        for (var other = nextOut[next]; other != None; other = nextOut[other])
            if (IsSharper(back, arrangement.Vertices[at], End(other), End(next)))
                next = other;
        return next;
    }

    /// <summary>Turned to the right from the way back, one comes by one vertex before another.</summary>
    private bool IsSharper(Point back, Point at, int one, int other)
    {
        var (a, b) = (arrangement.Vertices[one], arrangement.Vertices[other]);
        var (sideA, sideB) = (Arrangement.Side(at, back, a), Arrangement.Side(at, back, b));
        // On the right of the way back first, then straight on, then on its left.
        return sideA != sideB ? sideA < sideB : Arrangement.Side(at, a, b) < 0;
    }

    private void Close(int from)
    {
        var edges = way[from..];
        way.RemoveRange(from, edges.Count);
        foreach (var edge in edges)
        {
            placeOnWay[Start(edge)] = None;
            ringOf[edge] = rings.Count;
        }
        var first = edges.MinBy(Start);
        var place = edges.IndexOf(first);
        var points = new Point[edges.Count];
        for (var i = 0; i < points.Length; i++)
            points[i] = arrangement.Vertices[Start(edges[(place + i) % edges.Count])];
        var lowest = edges[(place + edges.Count - 1) % edges.Count];
        rings.Add(
            new(
                new Ring(ImmutableCollectionsMarshal.AsImmutableArray(points)),
                Start(first),
                lowest,
                Arrangement.Side(points[0], points[1], points[^1]) > 0
            )
        );
    }

    /// <param name="First">Number of its first vertex.</param>
    /// <param name="Lowest">The edge that leads to it, of a hole the lower one of both.</param>
    private readonly record struct Found(Ring Ring, int First, int Lowest, bool IsShell);
}
