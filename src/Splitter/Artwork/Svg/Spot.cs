namespace Splitter.Artwork.Svg;

/// <summary>A point or a vector in double precision: in user space, or in µm before it is snapped.</summary>
internal readonly record struct Spot(double X, double Y)
{
    public static Spot operator +(Spot a, Spot b) => new(a.X + b.X, a.Y + b.Y);

    public static Spot operator -(Spot a, Spot b) => new(a.X - b.X, a.Y - b.Y);

    public static Spot operator *(double by, Spot a) => new(by * a.X, by * a.Y);

    internal double Length => Math.Sqrt((X * X) + (Y * Y));

    internal Spot Towards(Spot other, double share) => this + (share * (other - this));

    internal bool IsFinite => double.IsFinite(X) && double.IsFinite(Y);
}
