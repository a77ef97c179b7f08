using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>Says of places whether something is drawn there, without asking every one of thousands of shapes.</summary>
internal sealed class DrawnGround
{
    /// <summary>
    /// Squares across the ground and down it, each with the shapes that come into it: a few where thousands are small,
    /// and no more than a thousand entries for one that is everywhere.
    /// </summary>
    private const int Squares = 32;

    private readonly Box bounds;
    private readonly List<Drawn>[] bins = new List<Drawn>[Squares * Squares];

    /// <param name="shapes">What is drawn.</param>
    /// <param name="bounds">A box around all of it.</param>
    internal DrawnGround(ImmutableArray<Region> shapes, Box bounds)
    {
        this.bounds = bounds;
        foreach (var shape in shapes.Where(s => !s.IsEmpty))
        {
            var drawn = new Drawn(shape.Bounds, [.. shape.Rings], Polygons.Containment(shape));
            for (var row = Row(shape.Bounds.Top); row <= Row(shape.Bounds.Bottom); row++)
            for (var column = Column(shape.Bounds.Left); column <= Column(shape.Bounds.Right); column++)
                (bins[(row * Squares) + column] ??= []).Add(drawn);
        }
    }

    private sealed record Drawn(Box Bounds, ImmutableArray<Ring> Rings, Func<double, double, bool> Holds);

    /// <summary>Some shape holds the place.</summary>
    internal bool Holds(Point p) => At(p).Exists(d => d.Bounds.Contains(p) && d.Holds(p.X, p.Y));

    /// <summary>One shape holds all of a box.</summary>
    internal bool HoldsDeep(Box box) =>
        At(new(box.Left, box.Top))
            .Exists(d => d.Bounds.Contains(box) && d.Holds(box.Left, box.Top) && !Crossed(d.Rings, box));

    /// <summary>An edge comes near the box, or crosses it.</summary>
    private static bool Crossed(ImmutableArray<Ring> rings, Box box)
    {
        foreach (var ring in rings)
        {
            // Ground may have thousands of holes elsewhere.
            if (!ring.Bounds.Meets(box))
                continue;
            var before = ring.Points[^1];
            foreach (var point in ring.Points)
            {
                if (
                    Math.Max(before.X, point.X) > box.Left
                    && Math.Min(before.X, point.X) < box.Right
                    && Math.Max(before.Y, point.Y) > box.Top
                    && Math.Min(before.Y, point.Y) < box.Bottom
                )
                    return true;
                before = point;
            }
        }
        return false;
    }

    private List<Drawn> At(Point p) => bounds.Contains(p) ? bins[(Row(p.Y) * Squares) + Column(p.X)] ?? [] : [];

    private int Column(int x) => Square(x - bounds.Left, bounds.Width);

    private int Row(int y) => Square(y - bounds.Top, bounds.Height);

    private static int Square(int from, int length) => (int)((long)from * Squares / (length + 1L));
}
