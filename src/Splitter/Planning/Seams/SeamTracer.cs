using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>Finds the lines along which territories meet.</summary>
internal static class SeamTracer
{
    /// <summary>
    /// Outlines nearer than this run together, µm: snapping to whole micrometres bends a shared line by one or two, and
    /// offsets drop vertices up to 10 µm away.
    /// </summary>
    private const int Together = 15;

    /// <summary>Shorter stretches are ends that the tolerance above leaves where outlines part, µm.</summary>
    private const int Shortest = 60;

    internal static ImmutableArray<Seam> Trace(ImmutableArray<Region> territories)
    {
        var near = territories.Select(t => new PathClipping(Polygons.Offset(t, Together, Join.Mitre))).ToArray();
        return
        [
            .. from a in Enumerable.Range(0, territories.Length)
            from b in Enumerable.Range(a + 1, territories.Length - a - 1)
            where territories[a].Bounds.Grown(Together).Meets(territories[b].Bounds)
            from ring in territories[b].Rings
            from line in near[a].Inside(ring.ToPolyline())
            where line.Length > Shortest
            select new Seam(a, b, line),
        ];
    }
}
