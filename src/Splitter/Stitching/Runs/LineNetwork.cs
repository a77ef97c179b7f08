using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Runs;

/// <summary>A stretch of line between two hubs, from the one's place to the other's.</summary>
internal readonly record struct Segment(int From, int To, Polyline Line);

/// <summary>
/// Lines as a network. Hubs are the ends of lines, and places where vertices of lines meet; a line that passes a hub is
/// divided there. Segments run from hub to hub; a closed line that meets nothing is one segment from its first vertex
/// back to it.
/// </summary>
internal sealed class LineNetwork
{
    /// <summary>
    /// What lies nearer together than this is one place, µm: the thread is not cut for a step of the tape. More would
    /// bend lines that only come near each other.
    /// </summary>
    internal const double Meeting = 1.5 * Units.TapeStep;

    /// <summary>
    /// Along a line, a hub's places nearer than this are one passage of it, µm: it lies within reach a while.
    /// </summary>
    private const double OnePassage = 2 * Meeting;

    private readonly List<Point> hubs = [];
    private readonly Dictionary<(int, int), List<int>> cells = [];
    private readonly ImmutableArray<Segment>.Builder segments = ImmutableArray.CreateBuilder<Segment>();

    /// <param name="atCrossings">Lines are divided where they cross as well.</param>
    internal LineNetwork(ImmutableArray<Polyline> lines, bool atCrossings = false)
    {
        foreach (var line in lines.Where(l => !l.IsClosed))
        {
            HubAt(line.Points[0]);
            HubAt(line.Points[^1]);
        }
        foreach (var meeting in SharedVertices(lines))
            HubAt(meeting);
        if (atCrossings)
            foreach (var crossing in Crossings.Of(lines))
                HubAt(crossing);
        foreach (var line in lines)
            Divide(line);
        Segments = segments.ToImmutable();
    }

    /// <summary>How many hubs there are.</summary>
    internal int Hubs => hubs.Count;

    /// <summary>In the order of the lines, each along its line.</summary>
    internal ImmutableArray<Segment> Segments { get; }

    /// <summary>
    /// Where vertices of lines meet, or one line comes back to a vertex of its own. Lines that lie along each other
    /// meet where they part, not at every vertex on the way.
    /// </summary>
    private static IEnumerable<Point> SharedVertices(ImmutableArray<Polyline> lines)
    {
        var ways = new Dictionary<Point, (Point, Point)>();
        var shared = new HashSet<Point>();
        foreach (var (points, closed) in lines.Select(l => (l.Points, l.IsClosed)))
            for (var i = closed ? 0 : 1; i < points.Length - 1; i++)
            {
                var (before, after) = (points[i == 0 ? ^2 : i - 1], points[i + 1]);
                var way = before.CompareTo(after) < 0 ? (before, after) : (after, before);
                if (!ways.TryAdd(points[i], way) && ways[points[i]] != way && shared.Add(points[i]))
                    yield return points[i];
            }
    }

    /// <summary>The hub at a place; a new one if there is none.</summary>
    private int HubAt(Point at)
    {
        var nearest = -1;
        foreach (var hub in Near(Box.Around([at])))
            if (
                hubs[hub].DistanceTo(at) <= Meeting
                && (nearest < 0 || hubs[hub].DistanceTo(at) < hubs[nearest].DistanceTo(at))
            )
                nearest = hub;
        if (nearest >= 0)
            return nearest;
        var cell = CellOf(at.X, at.Y);
        if (!cells.TryGetValue(cell, out var list))
            cells.Add(cell, list = []);
        list.Add(hubs.Count);
        hubs.Add(at);
        return hubs.Count - 1;
    }

    private void Divide(Polyline line)
    {
        var passed = Passages(line);
        if (line.IsClosed && passed.Count == 0)
            passed.Add((0, HubAt(line.Points[0])));
        if (line.IsClosed)
            // From its first hub round to the same.
            passed.Add((passed[0].Place + line.Points.Length - 1, passed[0].Hub));
        else
        {
            passed.Insert(0, (0, HubAt(line.Points[0])));
            passed.Add((line.Points.Length - 1, HubAt(line.Points[^1])));
        }
        for (var i = 1; i < passed.Count; i++)
        {
            var stretch = Stretch(line.Points, passed[i - 1], passed[i]);
            if (stretch.Length > (passed[i - 1].Hub == passed[i].Hub ? OnePassage : 0))
                segments.Add(new(passed[i - 1].Hub, passed[i].Hub, stretch));
        }
    }

    /// <summary>
    /// From one hub's place to the next one's; places count segments of the line, and go on past its closing.
    /// </summary>
    private Polyline Stretch(ImmutableArray<Point> points, (double Place, int Hub) from, (double Place, int Hub) to)
    {
        var stretch = new List<Point> { hubs[from.Hub] };
        for (var i = (int)Math.Floor(from.Place) + 1; i < to.Place; i++)
            // What the hub has taken the place of would make a hook.
            if (points[i % (points.Length - 1)] is var p && p != stretch[^1] && !IsTaken(p))
                stretch.Add(p);
        stretch.Add(hubs[to.Hub]);
        return new([.. stretch]);

        bool IsTaken(Point p) => p.DistanceTo(hubs[from.Hub]) <= Meeting || p.DistanceTo(hubs[to.Hub]) <= Meeting;
    }

    /// <summary>Where a line passes hubs, its own two ends aside, in order along it.</summary>
    private List<(double Place, int Hub)> Passages(Polyline line)
    {
        var points = line.Points;
        var found = new List<(double Place, double Along, double Off, int Hub)>();
        var along = 0.0;
        for (var i = 1; i < points.Length; i++)
        {
            var way = Vector.Between(points[i - 1], points[i]);
            var length = way.Length;
            foreach (var hub in Near(Box.Around([points[i - 1], points[i]])))
            {
                var to = Vector.Between(points[i - 1], hubs[hub]);
                var share = length > 0 ? Math.Clamp(Vector.Dot(to, way) / (length * length), 0, 1) : 0;
                if ((to - (way * share)).Length is var off && off <= Meeting)
                    found.Add((i - 1 + share, along + (share * length), off, hub));
            }
            along += length;
        }
        var passages = new List<(double Place, int Hub)>();
        foreach (var of in found.GroupBy(f => f.Hub))
        {
            var own = of.OrderBy(f => f.Along).ToList();
            for (int first = 0, next; first < own.Count; first = next)
            {
                for (next = first + 1; next < own.Count && own[next].Along - own[next - 1].Along <= OnePassage; )
                    next++;
                var passage = own[first..next];
                var (starts, ends) = (passage[0].Along <= OnePassage, along - passage[^1].Along <= OnePassage);
                if (line.IsClosed ? ends && own[0].Along <= OnePassage && first > 0 : IsOwnEnd(starts, ends, of.Key))
                    continue;
                passages.Add((passage.MinBy(f => f.Off).Place, of.Key));
            }
        }
        return [.. passages.OrderBy(p => p.Place).ThenBy(p => p.Hub)];

        bool IsOwnEnd(bool starts, bool ends, int hub) =>
            (starts && hub == HubAt(points[0])) || (ends && hub == HubAt(points[^1]));
    }

    /// <summary>Hubs that may lie within <see cref="Meeting"/> of a box, in their order.</summary>
    private List<int> Near(Box box)
    {
        var ((left, top), (right, bottom)) = (
            CellOf(box.Left - Meeting, box.Top - Meeting),
            CellOf(box.Right + Meeting, box.Bottom + Meeting)
        );
        var near = new List<int>();
        for (var x = left; x <= right; x++)
        for (var y = top; y <= bottom; y++)
            if (cells.TryGetValue((x, y), out var list))
                near.AddRange(list);
        near.Sort();
        return near;
    }

    private static (int X, int Y) CellOf(double x, double y) =>
        ((int)Math.Floor(x / Units.Millimetre), (int)Math.Floor(y / Units.Millimetre));
}
