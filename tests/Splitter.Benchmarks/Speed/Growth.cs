namespace Splitter.Benchmarks.Speed;

/// <summary>How a time grows with the size of the work.</summary>
internal static class Growth
{
    /// <summary>
    /// The exponent: slope of the line of least squares through the logarithms of both; null where there are too few.
    /// </summary>
    internal static double? Exponent(IReadOnlyList<(double Size, double Time)> points)
    {
        if (points.Count < 2)
            return null;
        var logs = points.Select(p => (X: Math.Log(p.Size), Y: Math.Log(p.Time))).ToList();
        var (x, y) = (logs.Average(p => p.X), logs.Average(p => p.Y));
        return logs.Sum(p => (p.X - x) * (p.Y - y)) / logs.Sum(p => (p.X - x) * (p.X - x));
    }
}
