using System.Runtime.InteropServices;
using NetTopologySuite.Algorithm;
using NetTopologySuite.Geometries;
using NetTopologySuite.Noding.Snapround;

namespace Splitter.Geometry.Arrangements;

/// <summary>
/// Leads lines from one whole micrometre to another so that they meet at these vertices alone, by snap rounding (Hobby
/// 1999; Goodrich, Guibas, Hershberger and Tanenbaum 1997): pixels that hold a vertex or a crossing are hot, and every
/// segment is led through the middles of all hot pixels that it passes. Left and upper edges belong to a pixel, the
/// others to its neighbours. What is hot near a segment is found where boxes of segments meet.
/// </summary>
internal sealed class SnapRounding
{
    /// <summary>
    /// A segment that passes the corner of a pixel by less than this share of the pixel's breadth is left to an exact
    /// predicate of the engine: floating point errs by less than a tenth of it as far as coordinates reach.
    /// </summary>
    private const double Doubtful = 1e-5;

    private readonly double[] xs;
    private readonly double[] ys;

    /// <summary>The pixel of each vertex.</summary>
    private readonly Point[] pixels;
    private readonly List<Passage> passages = [];
    private readonly List<Point> crossings = [];

    private SnapRounding(Outlines lines)
    {
        (xs, ys) = ([.. lines.Xs], [.. lines.Ys]);
        pixels = new Point[xs.Length];
        for (var i = 0; i < xs.Length; i++)
            pixels[i] = new(Rounded(xs[i]), Rounded(ys[i]));
    }

    /// <summary>
    /// Stretches between vertices, none of them a point, from the first line to the last: whose, from where to where.
    /// </summary>
    internal static List<Stretch> Of(Outlines lines)
    {
        var rounding = new SnapRounding(lines);
        rounding.Find(new(rounding.xs, rounding.ys, CollectionsMarshal.AsSpan(lines.Starts)));
        return rounding.Lead(lines.Starts);
    }

    private void Find(SegmentIndex index)
    {
        index.EachPair(Meet);
        // Many lines through one place cross there in each pair.
        foreach (var pixel in crossings.Distinct())
            index.EachNear(
                pixel,
                pixel,
                0,
                segment =>
                {
                    PassIfHot(segment, pixel);
                    return true;
                }
            );
        passages.Sort(InOrder);
    }

    private void Meet(int one, int other)
    {
        PassIfHot(one, pixels[other]);
        PassIfHot(other, pixels[one]);
        if (Cross(one, other))
        {
            // Rounded from twice the digits of floating point, whichever segment is the first.
            var at = IntersectionComputer.Intersection(At(one), At(one + 1), At(other), At(other + 1));
            var pixel = new Point(Rounded(at.X), Rounded(at.Y));
            crossings.Add(pixel);
            Pass(one, pixel);
            Pass(other, pixel);
        }
    }

    private void PassIfHot(int segment, Point pixel)
    {
        if (pixel != pixels[segment] && pixel != pixels[segment + 1] && Hits(segment, pixel))
            passages.Add(new(segment, pixel));
    }

    private void Pass(int segment, Point pixel)
    {
        if (pixel != pixels[segment] && pixel != pixels[segment + 1])
            passages.Add(new(segment, pixel));
    }

    /// <summary>The segment passes a pixel.</summary>
    private bool Hits(int segment, Point pixel)
    {
        var (ax, ay, bx, by) = (xs[segment], ys[segment], xs[segment + 1], ys[segment + 1]);
        var (x, y) = ((double)pixel.X, (double)pixel.Y);
        if (
            Math.Min(ax, bx) >= x + 0.5
            || Math.Max(ax, bx) < x - 0.5
            || Math.Min(ay, by) >= y + 0.5
            || Math.Max(ay, by) < y - 0.5
        )
            return false;
        var (dx, dy) = (bx - ax, by - ay);
        var off = Math.Abs((dx * (y - ay)) - (dy * (x - ax)));
        var breadth = 0.5 * (Math.Abs(dx) + Math.Abs(dy));
        return Math.Abs(off - breadth) > Doubtful * breadth
            ? off < breadth
            : new HotPixel(new Coordinate(x, y), 1).Intersects(At(segment), At(segment + 1));
    }

    /// <summary>The segments cross where neither of them ends.</summary>
    private bool Cross(int one, int other) =>
        Side(one, other) * Side(one, other + 1) < 0 && Side(other, one) * Side(other, one + 1) < 0;

    /// <summary>On which side of a segment a vertex lies.</summary>
    private int Side(int segment, int vertex)
    {
        var (x, y) = (xs[vertex], ys[vertex]);
        var left = (xs[segment] - x) * (ys[segment + 1] - y);
        var right = (ys[segment] - y) * (xs[segment + 1] - x);
        // A difference is nothing only where both are the same: they have a vertex in common.
        if (left == 0 && right == 0)
            return 0;
        // Differences and products are rounded once each.
        return Math.Abs(left - right) > 1e-15 * (Math.Abs(left) + Math.Abs(right))
            ? Math.Sign(left - right)
            : (int)Orientation.Index(At(segment), At(segment + 1), At(vertex));
    }

    private Coordinate At(int vertex) => new(xs[vertex], ys[vertex]);

    private static int Rounded(double value) => (int)Math.Floor(value + 0.5);

    private int InOrder(Passage a, Passage b)
    {
        if (a.Segment != b.Segment)
            return a.Segment.CompareTo(b.Segment);
        var (dx, dy) = (xs[a.Segment + 1] - xs[a.Segment], ys[a.Segment + 1] - ys[a.Segment]);
        var (alongX, alongY) = (
            Math.Sign(dx) * a.Pixel.X.CompareTo(b.Pixel.X),
            Math.Sign(dy) * a.Pixel.Y.CompareTo(b.Pixel.Y)
        );
        var (first, then) = Math.Abs(dx) >= Math.Abs(dy) ? (alongX, alongY) : (alongY, alongX);
        return first != 0 ? first : then;
    }

    private List<Stretch> Lead(List<int> starts)
    {
        var stretches = new List<Stretch>(pixels.Length + passages.Count);
        var next = 0;
        for (var line = 0; line + 1 < starts.Count; line++)
        {
            var from = pixels[starts[line]];
            for (var segment = starts[line]; segment + 1 < starts[line + 1]; segment++)
            {
                for (; next < passages.Count && passages[next].Segment == segment; next++)
                    Go(passages[next].Pixel);
                Go(pixels[segment + 1]);
            }

            void Go(Point to)
            {
                if (to != from)
                    stretches.Add(new(line, from, to));
                from = to;
            }
        }
        return stretches;
    }

    /// <summary>A segment passes a hot pixel that holds neither of its ends.</summary>
    private readonly record struct Passage(int Segment, Point Pixel);
}

/// <summary>What lies of a line between two vertices.</summary>
internal readonly record struct Stretch(int Line, Point From, Point To);
