namespace Splitter.Geometry;

/// <summary>
/// Whether a region is as wide as a disc somewhere. Shrinking it says so, too, but takes the engine very long where an
/// outline has steps much finer than the disc: each then meets many others. So a disc is looked for first.
/// </summary>
internal static class InscribedDisc
{
    /// <summary>Level lines on which a middle is looked for: enough for any outline that is not a tangle.</summary>
    private const int Rows = 16;

    /// <summary>Places along a line, in radii: the widest stretch is found as closely.</summary>
    private const double Apart = 0.25;

    /// <summary>Places along a line at most; a smaller disc is looked for less closely.</summary>
    private const int MostColumns = 1024;

    /// <summary>
    /// By so much more a disc that is found must fit, µm: an offset simplifies outlines and rounds arcs, and has to
    /// come to the same answer.
    /// </summary>
    private const double Spare = 50;

    /// <summary>A disc of this diameter (µm) fits in.</summary>
    internal static bool Fits(Region region, double diameter) =>
        Middles(region, diameter).Any(middle => IsClear(region, middle, (diameter / 2) + Spare))
        || !Polygons.Offset(region, -diameter / 2).IsEmpty;

    /// <summary>The middle of the widest stretch of each line, if it is wide enough.</summary>
    private static IEnumerable<(double X, double Y)> Middles(Region region, double diameter)
    {
        var box = region.Bounds;
        var columns = (int)Math.Clamp(box.Width / (diameter / 2 * Apart), 1, MostColumns);
        var (xs, ys) = (Places(box.Left, box.Width, columns), Places(box.Top, box.Height, Rows));
        var widest = new (double X, double Width)[Rows];
        Scan.Cover(
            region,
            xs,
            ys,
            (row, from, to) =>
            {
                if (xs[to] - xs[from] > widest[row].Width)
                    widest[row] = ((xs[from] + xs[to]) / 2, xs[to] - xs[from]);
            }
        );
        return Enumerable
            .Range(0, Rows)
            .Where(row => widest[row].Width >= diameter)
            .OrderByDescending(row => widest[row].Width)
            .Select(row => (widest[row].X, ys[row]));
    }

    private static double[] Places(int from, int length, int count) =>
        [.. Enumerable.Range(0, count).Select(i => from + (length * (i + 0.5) / count))];

    /// <summary>No outline comes as near to a place.</summary>
    private static bool IsClear(Region region, (double X, double Y) place, double distance)
    {
        foreach (var ring in region.Rings)
        {
            var before = ring.Points[^1];
            foreach (var point in ring.Points)
            {
                var (dx, dy) = (point.X - (double)before.X, point.Y - (double)before.Y);
                var length = (dx * dx) + (dy * dy);
                var share = (((place.X - before.X) * dx) + ((place.Y - before.Y) * dy)) / length;
                share = length == 0 ? 0 : Math.Clamp(share, 0, 1);
                var (x, y) = (before.X + (share * dx) - place.X, before.Y + (share * dy) - place.Y);
                if ((x * x) + (y * y) < distance * distance)
                    return false;
                before = point;
            }
        }
        return true;
    }
}
