using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// Draws an arc as a line that can be sewn: where it follows the edge between two shapes it is laid onto that edge, and
/// everywhere else the steps of its cells become straight stretches. Both its sides share the one line.
/// </summary>
internal sealed class ArcSmoother(Surface surface, SeamGrid grid)
{
    /// <summary>How far from the places of an edge between shapes the line may run, µm: less than thread spreads.</summary>
    private const double OnEdge = 150;

    /// <summary>So many places in a row on an edge are a stretch along it; fewer only cross it.</summary>
    private const int Stretch = 4;

    /// <summary>An edge is found this closely, µm.</summary>
    private const double Closely = 20;

    /// <summary>How far from the middles of cell sides the line may run elsewhere, cells: steps vanish, corners stay.</summary>
    private const double Steps = 0.8;

    internal Polyline Draw(Arc arc)
    {
        var nodes = arc.Nodes;
        if (arc.Other < 0)
            return new([.. nodes.Where((_, i) => i == 0 || i == nodes.Length - 1 || IsBend(nodes, i)).Select(Place)]);

        var room = grid.Grounds[arc.One].Common(grid.Grounds[arc.Other]);
        var points = new List<Point> { Place(nodes[0]) };
        var onEdge = new List<bool> { false };
        for (var i = 1; i < nodes.Length; i++)
        {
            var (at, isOnEdge) = Between(nodes[i - 1], nodes[i]);
            points.Add(new(Math.Clamp(at.X, room.Left, room.Right), Math.Clamp(at.Y, room.Top, room.Bottom)));
            onEdge.Add(isOnEdge);
        }
        points.Add(Place(nodes[^1]));
        onEdge.Add(false);
        // A place or two on an edge only cross it: the middle of the cells' side serves there too.
        for (int i = 0, from = 0; i <= onEdge.Count; i++)
        {
            if (i < onEdge.Count && onEdge[i])
                continue;
            if (i - from < Stretch)
                for (var k = from; k < i; k++)
                    (points[k], onEdge[k]) = (Middle(nodes[k - 1], nodes[k]), false);
            from = i + 1;
        }
        return new(Simplified(points, onEdge));
    }

    private Point Place((int Column, int Row) node) => new(grid.Xs[node.Column], grid.Ys[node.Row]);

    private Point Middle((int Column, int Row) from, (int Column, int Row) to) => Place(from).Towards(Place(to), 0.5);

    private static bool IsBend(ImmutableArray<(int Column, int Row)> nodes, int i) =>
        nodes[i - 1].Column != nodes[i + 1].Column && nodes[i - 1].Row != nodes[i + 1].Row;

    /// <summary>Where the line passes the side of two cells: on the edge of shapes between their middles, if there is one.</summary>
    private (Point At, bool IsOnEdge) Between((int Column, int Row) from, (int Column, int Row) to)
    {
        var (a, b) =
            from.Row == to.Row
                ? ((Math.Min(from.Column, to.Column), from.Row - 1), (Math.Min(from.Column, to.Column), from.Row))
                : ((from.Column - 1, Math.Min(from.Row, to.Row)), (from.Column, Math.Min(from.Row, to.Row)));
        var (p, q) = (CellMiddle(a), CellMiddle(b));
        var (topP, topQ) = (surface.TopAt(p.X, p.Y), surface.TopAt(q.X, q.Y));
        if (topP == topQ)
            return (Middle(from, to), false);
        var (low, high) = (0.0, 1.0);
        while (p.DistanceTo(q) * (high - low) > Closely)
        {
            var share = (low + high) / 2;
            var top = surface.TopAt(p.X + ((q.X - p.X) * share), p.Y + ((q.Y - p.Y) * share));
            if (top == topP)
                low = share;
            else
                high = share;
        }
        return (p.Towards(q, (low + high) / 2), true);
    }

    private Point CellMiddle((int Column, int Row) cell) => grid.Middle(grid.At(cell.Column, cell.Row));

    /// <summary>
    /// Keeps the places without which the line would stray too far (Douglas and Peucker 1973), each with its own measure
    /// of too far.
    /// </summary>
    private ImmutableArray<Point> Simplified(List<Point> points, List<bool> onEdge)
    {
        var kept = new bool[points.Count];
        (kept[0], kept[^1]) = (true, true);
        var open = new Stack<(int From, int To)>();
        // A closed line has no ends to start from: its farthest place is kept as well.
        var first = points[0] == points[^1] ? Farthest(0) : points.Count - 1;
        kept[first] = true;
        open.Push((0, first));
        if (first < points.Count - 1)
            open.Push((first, points.Count - 1));
        while (open.TryPop(out var span))
        {
            var (worst, at) = (1.0, -1);
            for (var i = span.From + 1; i < span.To; i++)
            {
                var far =
                    DistanceToSegment(points[i], points[span.From], points[span.To])
                    / (onEdge[i] ? OnEdge : Steps * grid.Step);
                if (far > worst)
                    (worst, at) = (far, i);
            }
            if (at < 0)
                continue;
            kept[at] = true;
            open.Push((span.From, at));
            open.Push((at, span.To));
        }
        var line = ImmutableArray.CreateBuilder<Point>();
        for (var i = 0; i < points.Count; i++)
            if (kept[i] && (line.Count == 0 || line[^1] != points[i]))
                line.Add(points[i]);
        return line.ToImmutable();

        int Farthest(int from) => Enumerable.Range(0, points.Count).MaxBy(i => points[from].DistanceTo(points[i]));
    }

    private static double DistanceToSegment(Point p, Point a, Point b)
    {
        var (way, from) = (Vector.Between(a, b), Vector.Between(a, p));
        var square = Vector.Dot(way, way);
        var share = square == 0 ? 0 : Math.Clamp(Vector.Dot(from, way) / square, 0, 1);
        return (from - (way * share)).Length;
    }
}
