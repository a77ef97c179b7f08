namespace Splitter.Geometry;

/// <summary>Tells ground that has the same outlines, point by point, from other ground.</summary>
internal sealed class SameOutlines : IEqualityComparer<Region>
{
    internal static readonly SameOutlines Comparer = new();

    public bool Equals(Region? one, Region? other) =>
        ReferenceEquals(one, other)
        || (
            one is not null
            && other is not null
            && one.Polygons.Length == other.Polygons.Length
            && one.Polygons.Zip(other.Polygons).All(p => AreSame(p.First, p.Second))
        );

    public int GetHashCode(Region region) =>
        region.Bounds.Left ^ (region.Bounds.Top << 8) ^ (region.Bounds.Right << 16) ^ region.Polygons.Length;

    private static bool AreSame(Polygon one, Polygon other) =>
        one.Outer.Equals(other.Outer) && one.Holes.AsSpan().SequenceEqual(other.Holes.AsSpan());
}
