using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// Outlines whose points lie closer together than a tape can tell. Offset by many times that distance, each of their
/// steps meets many others, and the engine takes minutes where a plainer outline says the same.
/// </summary>
internal static class FineOutlines
{
    /// <summary>Points of an outline closer than this on average are finer than a tape is, µm.</summary>
    private const int Fine = Units.TapeStep;

    /// <summary>The region with a plainer outline where its own is so fine; else the same.</summary>
    /// <param name="tolerance">How far points that are dropped may lie from the plainer outline, µm.</param>
    internal static Region Thinned(Region region, double tolerance) =>
        IsFine(region) ? Polygons.Simplify(region, tolerance) : region;

    private static bool IsFine(Region region)
    {
        var (length, points) = (0.0, 0L);
        foreach (var ring in region.Rings)
        {
            points += ring.Points.Length;
            var before = ring.Points[^1];
            foreach (var point in ring.Points)
            {
                length += before.DistanceTo(point);
                before = point;
            }
        }
        return length < points * (double)Fine;
    }
}
