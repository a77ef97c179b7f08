using Splitter.Geometry;

namespace Splitter.Checking;

/// <summary>
/// The nearest of many points: they lie sorted by x, and a search walks both ways from the place of the one that is
/// asked about until x alone is farther than what was found.
/// </summary>
internal sealed class NearestPoint
{
    private readonly (Point At, string Shape)[] sorted;

    internal NearestPoint(IEnumerable<(Point At, string Shape)> points) =>
        sorted = [.. points.OrderBy(p => p.At).ThenBy(p => p.Shape, StringComparer.Ordinal)];

    /// <summary>Infinite when there are no points.</summary>
    internal (double Distance, string Shape) To(Point point)
    {
        var best = (Distance: double.PositiveInfinity, Shape: "");
        var (low, high) = (0, sorted.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (sorted[middle].At.X < point.X)
                low = middle + 1;
            else
                high = middle;
        }
        for (var i = low; i < sorted.Length && sorted[i].At.X - (double)point.X < best.Distance; i++)
            Try(i);
        for (var i = low - 1; i >= 0 && point.X - (double)sorted[i].At.X < best.Distance; i--)
            Try(i);
        return best;

        void Try(int i)
        {
            var distance = sorted[i].At.DistanceTo(point);
            if (distance < best.Distance)
                best = (distance, sorted[i].Shape);
        }
    }
}
