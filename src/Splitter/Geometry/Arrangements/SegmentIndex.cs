namespace Splitter.Geometry.Arrangements;

/// <summary>
/// Segments of lines by where they lie: runs of neighbours, in the order of a curve that fills the plane (Morton 1966),
/// under a tree of boxes. Segment k leads from vertex k to the next one.
/// </summary>
internal sealed class SegmentIndex
{
    /// <summary>
    /// Segments whose boxes are a pixel apart may still share a hot pixel: so far apart they are said to meet, µm.
    /// </summary>
    private const double Reach = 1;

    /// <summary>So many segments are looked at one by one rather than in a tree.</summary>
    private const int MostInRun = 8;

    /// <summary>By segment.</summary>
    private readonly Extent[] boxes;
    private readonly Run[] runs;

    /// <summary>By height above the runs; each box holds two of the level below.</summary>
    private readonly List<Extent[]> levels = [];

    /// <param name="starts">The first vertex of each line, and where the last line ends.</param>
    internal SegmentIndex(double[] xs, double[] ys, ReadOnlySpan<int> starts)
    {
        boxes = new Extent[xs.Length];
        for (var i = 0; i + 1 < xs.Length; i++)
            boxes[i] = new(
                Math.Min(xs[i], xs[i + 1]),
                Math.Min(ys[i], ys[i + 1]),
                Math.Max(xs[i], xs[i + 1]),
                Math.Max(ys[i], ys[i + 1])
            );
        var found = new List<Run>();
        for (var line = 0; line + 1 < starts.Length; line++)
        for (var from = starts[line]; from + 1 < starts[line + 1]; from += MostInRun)
            found.Add(new(from, Math.Min(from + MostInRun, starts[line + 1] - 1)));
        runs = [.. found];
        var level = Array.ConvertAll(runs, Around);
        Array.Sort(Array.ConvertAll(level, new Curve(level).Place), runs);
        level = Array.ConvertAll(runs, Around);
        for (levels.Add(level); level.Length > 1; levels.Add(level))
            level = Above(level);
    }

    /// <summary>Every pair of segments whose boxes meet, the smaller number first.</summary>
    internal void EachPair(Action<int, int> visit)
    {
        if (runs.Length > 0)
            Within(levels.Count - 1, 0);

        void Within(int level, int node)
        {
            if (level == 0)
            {
                Meet(node, node, visit);
                return;
            }
            var (one, other) = (2 * node, (2 * node) + 1);
            Within(level - 1, one);
            if (other >= levels[level - 1].Length)
                return;
            Within(level - 1, other);
            Between(level - 1, one, other);
        }

        void Between(int level, int one, int other)
        {
            if (!levels[level][one].Meets(levels[level][other]))
                return;
            if (level == 0)
            {
                Meet(one, other, visit);
                return;
            }
            var below = levels[level - 1].Length;
            for (var a = 2 * one; a < Math.Min(below, (2 * one) + 2); a++)
            for (var b = 2 * other; b < Math.Min(below, (2 * other) + 2); b++)
                Between(level - 1, a, b);
        }
    }

    /// <summary>Every segment whose box comes near a straight line, until enough are seen.</summary>
    /// <param name="reach">How near, µm.</param>
    /// <param name="visit">Whether to go on.</param>
    internal void EachNear(Point from, Point to, double reach, Func<int, bool> visit)
    {
        var at = new Strip(from, to, reach);
        if (runs.Length > 0)
            Below(levels.Count - 1, 0);

        bool Below(int level, int node)
        {
            if (!at.Meets(levels[level][node]))
                return true;
            if (level > 0)
            {
                for (var child = 2 * node; child < Math.Min(levels[level - 1].Length, (2 * node) + 2); child++)
                    if (!Below(level - 1, child))
                        return false;
            }
            else
                for (var segment = runs[node].From; segment < runs[node].To; segment++)
                    if (at.Meets(boxes[segment]) && !visit(segment))
                        return false;
            return true;
        }
    }

    private void Meet(int one, int other, Action<int, int> visit)
    {
        ref readonly var around = ref levels[0][other];
        var (own, others) = (runs[one], runs[other]);
        for (var a = own.From; a < own.To; a++)
        {
            ref readonly var box = ref boxes[a];
            if (!box.Meets(around))
                continue;
            for (var b = one == other ? a + 1 : others.From; b < others.To; b++)
                if (box.Meets(boxes[b]))
                    visit(Math.Min(a, b), Math.Max(a, b));
        }
    }

    private Extent Around(Run run)
    {
        var box = boxes[run.From];
        for (var segment = run.From + 1; segment < run.To; segment++)
            box = box.Joined(boxes[segment]);
        return box;
    }

    private static Extent[] Above(Extent[] boxes)
    {
        var above = new Extent[(boxes.Length + 1) / 2];
        for (var i = 0; i < above.Length; i++)
            above[i] = (2 * i) + 1 < boxes.Length ? boxes[2 * i].Joined(boxes[(2 * i) + 1]) : boxes[2 * i];
        return above;
    }

    /// <summary>Segments from one, up to but without another.</summary>
    private readonly record struct Run(int From, int To);

    /// <summary>A box whose sides are no whole micrometres.</summary>
    private readonly record struct Extent(double Left, double Top, double Right, double Bottom)
    {
        internal Extent Joined(Extent other) =>
            new(
                Math.Min(Left, other.Left),
                Math.Min(Top, other.Top),
                Math.Max(Right, other.Right),
                Math.Max(Bottom, other.Bottom)
            );

        internal bool Meets(in Extent other) =>
            Left <= other.Right + Reach
            && other.Left <= Right + Reach
            && Top <= other.Bottom + Reach
            && other.Top <= Bottom + Reach;
    }

    /// <summary>What is near a straight line: of many slanted ones side by side, few boxes meet each.</summary>
    private readonly struct Strip(Point from, Point to, double reach)
    {
        private readonly (double X, double Y) way = ((double)to.X - from.X, (double)to.Y - from.Y);
        private readonly Extent around = new(
            Math.Min(from.X, to.X) - reach,
            Math.Min(from.Y, to.Y) - reach,
            Math.Max(from.X, to.X) + reach,
            Math.Max(from.Y, to.Y) + reach
        );

        internal bool Meets(in Extent box)
        {
            if (!around.Meets(box))
                return false;
            // The box's middle from the line, and how far the box reaches towards it; both times the line's length.
            var (x, y) = (((box.Left + box.Right) / 2) - from.X, ((box.Top + box.Bottom) / 2) - from.Y);
            var towards = (Math.Abs(way.X) * (box.Bottom - box.Top)) + (Math.Abs(way.Y) * (box.Right - box.Left));
            var length = Math.Sqrt((way.X * way.X) + (way.Y * way.Y));
            return Math.Abs((way.X * y) - (way.Y * x)) <= (towards / 2) + ((reach + Reach) * length);
        }
    }

    /// <summary>
    /// The order of boxes along a curve through all of them: that of their middles' bits, x and y in turn.
    /// </summary>
    private readonly struct Curve(Extent[] boxes)
    {
        private readonly Extent all = boxes.Aggregate(
            new Extent(double.MaxValue, double.MaxValue, double.MinValue, double.MinValue),
            (a, b) => a.Joined(b)
        );

        internal ulong Place(Extent box) =>
            Spread(box.Left + box.Right - (2 * all.Left), all.Right - all.Left)
            | (Spread(box.Top + box.Bottom - (2 * all.Top), all.Bottom - all.Top) << 1);

        /// <summary>The bits of a share of twice a length, each with a gap after it.</summary>
        private static ulong Spread(double part, double length)
        {
            var bits = length > 0 ? (ulong)(part / length * 0x7fff_ffff) : 0;
            bits = (bits | (bits << 16)) & 0x0000_ffff_0000_ffff;
            bits = (bits | (bits << 8)) & 0x00ff_00ff_00ff_00ff;
            bits = (bits | (bits << 4)) & 0x0f0f_0f0f_0f0f_0f0f;
            bits = (bits | (bits << 2)) & 0x3333_3333_3333_3333;
            return (bits | (bits << 1)) & 0x5555_5555_5555_5555;
        }
    }
}
