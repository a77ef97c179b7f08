using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Fills;

/// <summary>The path of one block as it grows, on the tape's grid, without stitches that are too short.</summary>
internal sealed class Needle(Lattice lattice)
{
    private readonly ImmutableArray<Stitch>.Builder path = ImmutableArray.CreateBuilder<Stitch>();
    private bool atCorner;

    /// <summary>Nothing has been sewn.</summary>
    internal bool IsIdle => path.Count == 0;

    /// <summary>Where it is.</summary>
    internal Point At => path[^1].At;

    internal ImmutableArray<Stitch> Path => path.ToImmutable();

    /// <summary>
    /// Sews to a point unless it lies too near. Row ends and other corners draw the shape's edge: one takes the place
    /// of the penetration before it that crowds it.
    /// </summary>
    internal void To(Point point, StitchUse use, bool corner = false)
    {
        if (path.Count > 0 && At.DistanceTo(point) < StitchRules.Shortest)
        {
            if (!corner || atCorner || (path.Count > 1 && path[^2].At.DistanceTo(point) < StitchRules.Shortest))
                return;
            path.RemoveAt(path.Count - 1);
        }
        path.Add(new(point, use));
        atCorner = corner;
    }

    /// <summary>Sews to a place in equal stitches that are not longer than a length in µm.</summary>
    internal void Straight(Point to, StitchUse use, double length, bool corner = false)
    {
        var from = At;
        var count = (int)Math.Ceiling(from.DistanceTo(to) / length);
        for (var i = 1; i < count; i++)
            To(from.Towards(to, (double)i / count).OnTape(), use);
        To(to, use, corner);
    }

    /// <summary>Sews along a way that begins where the needle is, with as few corners as will do.</summary>
    /// <param name="outline">Of the ground that it stays inside; none for a way that follows the outline.</param>
    internal void Along(ImmutableArray<Place> way, StitchUse use, double length, Outline? outline)
    {
        way = lattice.Divided(way);
        ImmutableArray<Point> points = [At, .. way.Skip(1).Select(lattice.PointAt)];
        foreach (
            var corner in Shortcut.Over(points, (i, j) => outline?.IsLeft(lattice.Straight(way[i], way[j])) != false)
        )
            Straight(corner, use, length);
    }
}
