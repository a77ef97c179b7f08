using System.Collections.Immutable;
using Splitter.Geometry.Arrangements;

namespace Splitter.Geometry;

/// <summary>
/// Outlines with fewer vertices (Ramer 1972; Douglas and Peucker 1973). A stretch becomes a straight line only where no
/// other line comes as near to that as its own vertices lie: so that outlines neither cross nor change sides.
/// </summary>
internal sealed class Simplification
{
    /// <summary>
    /// How often the points of a ring are looked at on average before stretches are halved. Where the farthest vertex
    /// lies about in the middle, that is the logarithm of their number, 20 for a million; of fine stairs it may be the
    /// very next one each time.
    /// </summary>
    private const int MostLooks = 64;

    private readonly Region region;
    private readonly double tolerance;
    private readonly List<Point> points = [];
    private readonly List<int> starts = [0];
    private readonly SegmentIndex index;
    private readonly bool[] isKept;

    /// <param name="tolerance">How far from the new outline old vertices may lie, µm.</param>
    internal Simplification(Region region, double tolerance)
    {
        (this.region, this.tolerance) = (region, tolerance);
        foreach (var ring in region.Rings)
        {
            points.AddRange(ring.Points.AsSpan());
            points.Add(ring.Points[0]);
            starts.Add(points.Count);
        }
        isKept = new bool[points.Count];
        index = new([.. points.Select(p => (double)p.X)], [.. points.Select(p => (double)p.Y)], [.. starts]);
    }

    /// <summary>How many vertices were measured, each as often as it was.</summary>
    internal long Looks { get; private set; }

    internal Region Simplified()
    {
        var line = 0;
        return Region.Sorted([
            .. region.Polygons.Select(p => new Polygon(
                Simplified(p.Outer, line++),
                [.. p.Holes.Select(hole => Simplified(hole, line++))]
            )),
        ]);
    }

    private Ring Simplified(Ring ring, int line)
    {
        // The first vertex is the smallest one: a corner.
        var (first, last) = (starts[line], starts[line + 1] - 1);
        var opposite = first;
        for (var i = first; i < last; i++)
            if (points[i].DistanceTo(points[first]) > points[opposite].DistanceTo(points[first]))
                opposite = i;
        isKept[first] = isKept[opposite] = true;
        var most = Looks + ((long)MostLooks * (last - first));
        var open = new Stack<(int From, int To)>([(opposite, last), (first, opposite)]);
        while (open.TryPop(out var stretch))
        {
            if (stretch.To - stretch.From < 2)
                continue;
            Looks += stretch.To - stretch.From;
            var (farthest, off) = Farthest(stretch.From, stretch.To);
            if (off <= tolerance && IsFree(line, stretch.From, stretch.To, off))
                continue;
            var divided = Looks > most ? (stretch.From + stretch.To) / 2 : farthest;
            isKept[divided] = true;
            open.Push((divided, stretch.To));
            open.Push((stretch.From, divided));
        }
        ImmutableArray<Point> kept = [.. ring.Points.Where((_, i) => isKept[first + i])];
        // As narrow as the tolerance everywhere, a ring would be left with no ground, or turned inside out.
        return
            kept.Length >= 3
            && new Ring(kept) is var simple
            && Math.Sign(simple.SignedArea) == Math.Sign(ring.SignedArea)
            ? simple
            : ring;
    }

    /// <summary>The vertex of a stretch that lies farthest from the straight line between its ends.</summary>
    private (int Vertex, double Distance) Farthest(int from, int to)
    {
        var (farthest, off) = (from + 1, -1.0);
        var (a, b) = (points[from], points[to]);
        var (dx, dy) = ((double)b.X - a.X, (double)b.Y - a.Y);
        var square = (dx * dx) + (dy * dy);
        for (var i = from + 1; i < to; i++)
        {
            var (x, y) = ((double)points[i].X - a.X, (double)points[i].Y - a.Y);
            var share = square > 0 ? Math.Clamp(((x * dx) + (y * dy)) / square, 0, 1) : 0;
            (x, y) = (x - (share * dx), y - (share * dy));
            if ((x * x) + (y * y) > off)
                (farthest, off) = (i, (x * x) + (y * y));
        }
        return (farthest, Math.Sqrt(off));
    }

    /// <summary>
    /// No line lies near the straight one but the stretch itself and the segments before and after it.
    /// </summary>
    private bool IsFree(int line, int from, int to, double off)
    {
        var before = from == starts[line] ? starts[line + 1] - 2 : from - 1;
        var after = to == starts[line + 1] - 1 ? starts[line] : to;
        var isFree = true;
        index.EachNear(
            points[from],
            points[to],
            off,
            segment =>
            {
                if ((segment < from || segment >= to) && segment != before && segment != after)
                    isFree = Polygons.Distance(points[segment], points[segment + 1], points[from], points[to]) > off;
                return isFree;
            }
        );
        return isFree;
    }
}
