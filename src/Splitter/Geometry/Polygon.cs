using System.Collections.Immutable;

namespace Splitter.Geometry;

/// <summary>
/// A closed ring of at least three points; the last is not the first repeated. On the drawing, with y down, an outer
/// ring runs clockwise and a hole counter-clockwise once it has been through <see cref="Polygons"/>.
/// </summary>
internal sealed record Ring(ImmutableArray<Point> Points)
{
    /// <summary>The box around it.</summary>
    public Box Bounds { get; } = Box.Around(Points.AsSpan());

    /// <summary>Area in square micrometres, positive when clockwise as seen with y down.</summary>
    public double SignedArea
    {
        get
        {
            Int128 twice = 0;
            for (int i = 0, j = Points.Length - 1; i < Points.Length; j = i++)
                twice += ((Int128)Points[j].X * Points[i].Y) - ((Int128)Points[i].X * Points[j].Y);
            return (double)twice / 2;
        }
    }

    /// <summary>The ring as a closed polyline.</summary>
    public Polyline ToPolyline() => new(Points.Add(Points[0]));

    /// <summary>Equal when the points are, from the same start.</summary>
    public bool Equals(Ring? other) => other is not null && Points.AsSpan().SequenceEqual(other.Points.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode() => Points.Length;
}

/// <summary>One outer ring and the holes in it.</summary>
internal sealed record Polygon(Ring Outer, ImmutableArray<Ring> Holes)
{
    /// <summary>Area in square micrometres, holes taken off.</summary>
    public double Area => Math.Abs(Outer.SignedArea) - Holes.Sum(h => Math.Abs(h.SignedArea));

    /// <summary>Outer ring first, then the holes.</summary>
    public IEnumerable<Ring> Rings => Holes.Prepend(Outer);
}

/// <summary>
/// A piece of ground: any number of polygons that do not overlap, as <see cref="Polygons"/> makes them. Rings made by
/// hand must not cross themselves: what winds the other way would be lost.
/// </summary>
internal sealed record Region(ImmutableArray<Polygon> Polygons)
{
    /// <summary>No ground at all.</summary>
    public static readonly Region Empty = new([]);

    /// <summary>The box around it.</summary>
    public Box Bounds { get; } = Box.Around(Polygons.Select(p => p.Outer.Bounds));

    /// <summary>Polygons in order of their first points, whatever their order was.</summary>
    internal static Region Sorted(IEnumerable<Polygon> polygons) =>
        new([.. polygons.OrderBy(p => p.Outer.Points[0]).ThenBy(p => p.Outer.Points[1])]);

    /// <summary>Holds no ground.</summary>
    public bool IsEmpty => Polygons.IsEmpty;

    /// <summary>Area in square micrometres.</summary>
    public double Area => Polygons.Sum(p => p.Area);

    /// <summary>Every ring, outer and hole.</summary>
    public IEnumerable<Ring> Rings => Polygons.SelectMany(p => p.Rings);

    /// <summary>
    /// The same ground within a box, and perhaps other ground beyond it: without polygons and holes that lie elsewhere,
    /// so that ground with thousands of holes is not gone through for each little thing on it.
    /// </summary>
    internal Region Near(Box box) =>
        Polygons.All(p => p.Outer.Bounds.Meets(box) && p.Holes.All(h => h.Bounds.Meets(box)))
            ? this
            : new([
                .. Polygons
                    .Where(p => p.Outer.Bounds.Meets(box))
                    .Select(p => new Polygon(p.Outer, p.Holes.RemoveAll(h => !h.Bounds.Meets(box)))),
            ]);

    /// <summary>The ground inside a box.</summary>
    public static Region Of(Box box) =>
        box.Width <= 0 || box.Height <= 0
            ? Empty
            : new([
                new Polygon(
                    new Ring([
                        new(box.Left, box.Top),
                        new(box.Right, box.Top),
                        new(box.Right, box.Bottom),
                        new(box.Left, box.Bottom),
                    ]),
                    []
                ),
            ]);
}
