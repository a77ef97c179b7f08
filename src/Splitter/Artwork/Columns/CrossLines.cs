using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>Where straight lines run inside a region.</summary>
internal sealed class CrossLines(Region region)
{
    private readonly (Point A, Point B)[] edges =
    [
        .. region.Rings.SelectMany(ring =>
            Enumerable
                .Range(0, ring.Points.Length)
                .Select(i => (ring.Points[i], ring.Points[(i + 1) % ring.Points.Length]))
        ),
    ];

    /// <summary>
    /// The stretches inside the region of the line through a point, as distances from it in the unit direction.
    /// </summary>
    internal List<(double Low, double High)> Spans(Point through, Vector direction)
    {
        var crossings = new List<double>();
        foreach (var (a, b) in edges)
        {
            var (toA, toB) = (Vector.Between(through, a), Vector.Between(through, b));
            var (sideA, sideB) = (Vector.Cross(direction, toA), Vector.Cross(direction, toB));
            if (sideA <= 0 == sideB <= 0)
                continue;
            var share = sideA / (sideA - sideB);
            crossings.Add(Vector.Dot(toA + ((toB - toA) * share), direction));
        }
        crossings.Sort();
        var spans = new List<(double, double)>();
        for (var i = 0; i + 1 < crossings.Count; i += 2)
            spans.Add((crossings[i], crossings[i + 1]));
        return spans;
    }
}
