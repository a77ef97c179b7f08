namespace Splitter.Artwork.Svg.Paths;

/// <summary>Divides flat paths into dashes (SVG 1.1, 11.4).</summary>
internal static class Dashes
{
    /// <summary>More dashes than this in one shape are no pattern that a person drew.</summary>
    private const int MostDashes = 100_000;

    /// <summary>
    /// A dash of no length is a dot; this much of the line, µm, keeps its direction for a square cap.
    /// </summary>
    private const double DotLength = 1e-3;

    /// <summary>Share of a pattern that the sums of its lengths may miss the path's end by.</summary>
    private const double Rounding = 1e-9;

    /// <param name="pattern">Dash, gap, dash …; an even number, none negative, not all zero.</param>
    /// <returns>Open paths in drawing order; null when there would be too many.</returns>
    internal static List<FlatPath>? Cut(List<FlatPath> paths, List<double> pattern, double offset)
    {
        var period = pattern.Sum();
        var length = paths.Sum(Length);
        if (!double.IsFinite(period) || length / period * pattern.Count > MostDashes)
            return null;
        var start = offset % period;
        if (start < 0)
            start += period;
        return [.. paths.SelectMany(p => Cut(p, pattern, start))];
    }

    private static IEnumerable<FlatPath> Cut(FlatPath path, List<double> pattern, double start)
    {
        // Where in the pattern the path begins, and how much of that dash or gap is left.
        var index = 0;
        while (start > 0 && start >= pattern[index])
        {
            start -= pattern[index];
            index = (index + 1) % pattern.Count;
        }
        var left = pattern[index] - start;
        var dash = index % 2 == 0 ? new List<Spot> { path.Points[0] } : null;
        foreach (var (from, to) in Sides(path))
        {
            var side = (to - from).Length;
            var walked = 0.0;
            while (side - walked > left)
            {
                walked += left;
                var here = from.Towards(to, walked / side);
                if (dash is not null)
                {
                    dash.Add(here == dash[0] ? here + (DotLength / side * (to - from)) : here);
                    yield return new(dash, Closed: false);
                }
                index = (index + 1) % pattern.Count;
                left = pattern[index];
                dash = index % 2 == 0 ? [here] : null;
            }
            left -= side - walked;
            dash?.Add(to);
        }
        if (dash is { Count: > 1 })
            yield return new(dash, Closed: false);
        else if (dash is null && !path.Closed && path.Points.Count > 1 && EndsOnDot(pattern, index, left))
        {
            var (end, along) = (path.Points[^1], path.Points[^1] - path.Points[^2]);
            if (along.Length > 0)
                yield return new([end, end + (DotLength / along.Length * along)], Closed: false);
        }
    }

    /// <summary>The gap ends just where the path does, and a dot is next.</summary>
    private static bool EndsOnDot(List<double> pattern, int index, double left) =>
        left <= Rounding * pattern.Sum() && pattern[(index + 1) % pattern.Count] == 0;

    private static double Length(FlatPath path) => Sides(path).Sum(s => (s.To - s.From).Length);

    private static IEnumerable<(Spot From, Spot To)> Sides(FlatPath path)
    {
        for (var i = 1; i < path.Points.Count; i++)
            yield return (path.Points[i - 1], path.Points[i]);
        if (path.Closed && path.Points.Count > 1)
            yield return (path.Points[^1], path.Points[0]);
    }
}
