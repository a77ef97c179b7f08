namespace Splitter.Geometry;

/// <summary>
/// An axis-parallel box in design space, micrometres, edges included. Empty when right is left of left.
/// </summary>
internal readonly record struct Box(int Left, int Top, int Right, int Bottom)
{
    /// <summary>A box that holds nothing; joining it to another gives the other.</summary>
    public static readonly Box Empty = new(int.MaxValue, int.MaxValue, int.MinValue, int.MinValue);

    /// <summary>Right minus left, 0 when empty.</summary>
    public int Width => IsEmpty ? 0 : Right - Left;

    /// <summary>Bottom minus top, 0 when empty.</summary>
    public int Height => IsEmpty ? 0 : Bottom - Top;

    /// <summary>Holds no point.</summary>
    public bool IsEmpty => Right < Left || Bottom < Top;

    /// <summary>The middle, rounded down to whole micrometres.</summary>
    public Point Centre => new((int)(((long)Left + Right) >> 1), (int)(((long)Top + Bottom) >> 1));

    /// <summary>The box around points.</summary>
    public static Box Around(ReadOnlySpan<Point> points)
    {
        var box = Empty;
        foreach (var p in points)
            box = box.Including(p);
        return box;
    }

    /// <summary>The box around points.</summary>
    public static Box Around(IEnumerable<Point> points)
    {
        var box = Empty;
        foreach (var p in points)
            box = box.Including(p);
        return box;
    }

    /// <summary>The box around boxes.</summary>
    public static Box Around(IEnumerable<Box> boxes) => boxes.Aggregate(Empty, (a, b) => a.Joined(b));

    /// <summary>The smallest box that holds this one and the point.</summary>
    public Box Including(Point p) =>
        new(Math.Min(Left, p.X), Math.Min(Top, p.Y), Math.Max(Right, p.X), Math.Max(Bottom, p.Y));

    /// <summary>The smallest box that holds both.</summary>
    public Box Joined(Box other) =>
        new(
            Math.Min(Left, other.Left),
            Math.Min(Top, other.Top),
            Math.Max(Right, other.Right),
            Math.Max(Bottom, other.Bottom)
        );

    /// <summary>What both hold; empty when they do not meet.</summary>
    public Box Common(Box other) =>
        new(
            Math.Max(Left, other.Left),
            Math.Max(Top, other.Top),
            Math.Min(Right, other.Right),
            Math.Min(Bottom, other.Bottom)
        );

    /// <summary>Each edge moved outwards by a distance; a negative one moves inwards.</summary>
    public Box Grown(int by) => IsEmpty ? this : new(Left - by, Top - by, Right + by, Bottom + by);

    /// <summary>Smaller by this on every side, but no smaller than its middle.</summary>
    public Box Shrunk(int by) => IsEmpty ? this : Grown(-by).Joined(new(Centre.X, Centre.Y, Centre.X, Centre.Y));

    /// <summary>The point lies inside or on the edge.</summary>
    public bool Contains(Point p) => p.X >= Left && p.X <= Right && p.Y >= Top && p.Y <= Bottom;

    /// <summary>The other box lies inside, edges may touch.</summary>
    public bool Contains(Box other) =>
        !other.IsEmpty && other.Left >= Left && other.Right <= Right && other.Top >= Top && other.Bottom <= Bottom;

    /// <summary>The boxes share at least a point.</summary>
    public bool Meets(Box other) => !Common(other).IsEmpty;
}
