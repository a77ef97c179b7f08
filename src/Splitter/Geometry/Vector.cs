namespace Splitter.Geometry;

/// <summary>A direction or a move before it is snapped to whole micrometres.</summary>
internal readonly record struct Vector(double X, double Y)
{
    public static Vector operator +(Vector a, Vector b) => new(a.X + b.X, a.Y + b.Y);

    public static Vector operator -(Vector a, Vector b) => new(a.X - b.X, a.Y - b.Y);

    public static Vector operator -(Vector a) => new(-a.X, -a.Y);

    public static Vector operator *(Vector a, double by) => new(a.X * by, a.Y * by);

    /// <summary>Its length.</summary>
    internal double Length => Math.Sqrt((X * X) + (Y * Y));

    /// <summary>The same direction with length 1.</summary>
    internal Vector Unit => this * (1 / Length);

    /// <summary>Turned a quarter to the left as seen on the drawing, where y runs down.</summary>
    internal Vector Left => new(Y, -X);

    internal static Vector Between(Point from, Point to) => new(to.X - (double)from.X, to.Y - (double)from.Y);

    internal static double Dot(Vector a, Vector b) => (a.X * b.X) + (a.Y * b.Y);

    /// <summary>Positive when b lies to the right of a as seen on the drawing.</summary>
    internal static double Cross(Vector a, Vector b) => (a.X * b.Y) - (a.Y * b.X);

    /// <summary>The point this far from another one, snapped to whole micrometres.</summary>
    internal Point From(Point origin) =>
        new(
            (int)Math.Round(origin.X + X, MidpointRounding.AwayFromZero),
            (int)Math.Round(origin.Y + Y, MidpointRounding.AwayFromZero)
        );
}
