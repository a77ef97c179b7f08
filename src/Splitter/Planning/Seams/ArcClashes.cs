using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>Finds boundaries that run into each other: they may meet at their ends only.</summary>
internal static class ArcClashes
{
    /// <summary>
    /// Indexes of the arcs that cross or touch another one, or themselves, elsewhere than at shared ends.
    /// </summary>
    internal static HashSet<int> Find(ImmutableArray<SeamArc> arcs)
    {
        var bins = new SegmentBins<(int Arc, int Segment)>();
        for (var arc = 0; arc < arcs.Length; arc++)
        for (var i = 1; i < arcs[arc].Points.Length; i++)
            bins.Add(arcs[arc].Points[i - 1], arcs[arc].Points[i], (arc, i));
        var clashing = new HashSet<int>();
        for (var arc = 0; arc < arcs.Length; arc++)
        for (var i = 1; i < arcs[arc].Points.Length; i++)
        {
            var (a, b) = (arcs[arc].Points[i - 1], arcs[arc].Points[i]);
            foreach (var other in bins.Near(a, b))
                if (other.Tag.CompareTo((arc, i)) > 0 && Clash(a, b, other.A, other.B))
                {
                    clashing.Add(arc);
                    clashing.Add(other.Tag.Arc);
                }
        }
        return clashing;
    }

    /// <summary>Two straight lines have more in common than one shared end.</summary>
    private static bool Clash(Point a, Point b, Point c, Point d)
    {
        if (!Box.Around([a, b]).Meets(Box.Around([c, d])))
            return false;
        if (a == c)
            return SameWay(a, b, d);
        if (a == d)
            return SameWay(a, b, c);
        if (b == c)
            return SameWay(b, a, d);
        if (b == d)
            return SameWay(b, a, c);
        return Side(a, b, c) * Side(a, b, d) <= 0 && Side(c, d, a) * Side(c, d, b) <= 0;
    }

    private static bool SameWay(Point from, Point one, Point other) =>
        Side(from, one, other) == 0
        && ((one.X - (long)from.X) * (other.X - (long)from.X)) + ((one.Y - (long)from.Y) * (other.Y - (long)from.Y))
            > 0;

    private static int Side(Point a, Point b, Point p) =>
        Int128.Sign(((Int128)(b.X - (long)a.X) * (p.Y - (long)a.Y)) - ((Int128)(b.Y - (long)a.Y) * (p.X - (long)a.X)));
}
