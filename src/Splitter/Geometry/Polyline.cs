using System.Collections.Immutable;

namespace Splitter.Geometry;

/// <summary>An open path, or a closed one whose last point repeats its first. At least two points.</summary>
internal sealed record Polyline(ImmutableArray<Point> Points)
{
    /// <summary>The last point is the first one.</summary>
    public bool IsClosed => Points[0] == Points[^1];

    /// <summary>The box around it.</summary>
    public Box Bounds => Box.Around(Points);

    /// <summary>Length in micrometres.</summary>
    public double Length
    {
        get
        {
            double sum = 0;
            for (var i = 1; i < Points.Length; i++)
                sum += Points[i - 1].DistanceTo(Points[i]);
            return sum;
        }
    }

    /// <summary>Distance in micrometres from a point to the nearest place of it.</summary>
    internal double DistanceTo(Point at) =>
        Enumerable.Range(1, Points.Length - 1).Min(i => Polygons.Distance(at, at, Points[i - 1], Points[i]));

    /// <summary>Equal when the points are.</summary>
    public bool Equals(Polyline? other) => other is not null && Points.AsSpan().SequenceEqual(other.Points.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode() => Points.Aggregate(0, (hash, p) => unchecked((((hash * 31) + p.X) * 31) + p.Y));
}
