using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Fills;

/// <summary>
/// Ground that lies between two rows of the lattice: it is less than a row wide, and one row along its middle covers
/// it.
/// </summary>
internal static class Sliver
{
    /// <summary>The path of the row; empty when it is shorter than a stitch.</summary>
    internal static ImmutableArray<Stitch> Sew(Polygon polygon, Lattice lattice)
    {
        var ring = lattice.PlacesOf(polygon.Outer);
        var t = (ring.Min(p => p.T) + ring.Max(p => p.T)) / 2;
        var crossings = new List<double>();
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            if (ring[i].T <= t != ring[j].T <= t)
                crossings.Add(ring[i].U + ((ring[j].U - ring[i].U) * (t - ring[i].T) / (ring[j].T - ring[i].T)));
        crossings.Sort();
        var longest = Enumerable.Range(0, crossings.Count / 2).MaxBy(i => crossings[(2 * i) + 1] - crossings[2 * i]);
        var needle = new Needle(lattice);
        var (from, to) = (new Place(t, crossings[2 * longest]), new Place(t, crossings[(2 * longest) + 1]));
        needle.To(lattice.PointAt(from), StitchUse.Fill);
        needle.Along([from, to], StitchUse.Fill, PolygonSewer.TravelStitch, outline: null);
        return needle.Path;
    }
}
