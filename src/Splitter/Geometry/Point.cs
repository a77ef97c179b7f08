namespace Splitter.Geometry;

/// <summary>A point in design space, whole micrometres, x right and y down as in SVG.</summary>
internal readonly record struct Point(int X, int Y) : IComparable<Point>
{
    /// <summary>The difference, as a point.</summary>
    public static Point operator -(Point a, Point b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>The sum.</summary>
    public static Point operator +(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>From millimetres, rounded to whole micrometres.</summary>
    public static Point FromMillimetres(double x, double y) => new(Units.FromMillimetres(x), Units.FromMillimetres(y));

    /// <summary>Distance to another point, in micrometres.</summary>
    public double DistanceTo(Point other)
    {
        double dx = X - (double)other.X,
            dy = Y - (double)other.Y;
        return Math.Sqrt((dx * dx) + (dy * dy));
    }

    /// <summary>The nearest point on the tape's 0.1 mm grid.</summary>
    internal Point OnTape() => new(Units.OnTape(X), Units.OnTape(Y));

    /// <summary>The point a share of the way to another one, rounded to whole micrometres.</summary>
    internal Point Towards(Point other, double share) =>
        new(
            (int)Math.Round(X + ((other.X - (double)X) * share), MidpointRounding.AwayFromZero),
            (int)Math.Round(Y + ((other.Y - (double)Y) * share), MidpointRounding.AwayFromZero)
        );

    /// <summary>Order by x, then y: a fixed order wherever ties must be broken.</summary>
    public int CompareTo(Point other) => (X, Y).CompareTo((other.X, other.Y));
}
