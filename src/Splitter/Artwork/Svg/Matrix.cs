namespace Splitter.Artwork.Svg;

/// <summary>SVG's <c>matrix(a b c d e f)</c>: x' = ax + cy + e, y' = bx + dy + f.</summary>
internal readonly record struct Matrix(double A, double B, double C, double D, double E, double F)
{
    internal static readonly Matrix Identity = new(1, 0, 0, 1, 0, 0);

    /// <summary>The right factor is applied first, as in SVG's nested coordinate systems.</summary>
    public static Matrix operator *(Matrix outer, Matrix inner) =>
        new(
            (outer.A * inner.A) + (outer.C * inner.B),
            (outer.B * inner.A) + (outer.D * inner.B),
            (outer.A * inner.C) + (outer.C * inner.D),
            (outer.B * inner.C) + (outer.D * inner.D),
            (outer.A * inner.E) + (outer.C * inner.F) + outer.E,
            (outer.B * inner.E) + (outer.D * inner.F) + outer.F
        );

    /// <summary>The largest and the smallest factor by which it stretches a length (its singular values).</summary>
    internal (double Most, double Least) Stretch
    {
        get
        {
            var (sum, difference) = (new Spot(A + D, B - C).Length, new Spot(A - D, B + C).Length);
            return ((sum + difference) / 2, Math.Abs(sum - difference) / 2);
        }
    }

    internal bool IsFinite =>
        double.IsFinite(A)
        && double.IsFinite(B)
        && double.IsFinite(C)
        && double.IsFinite(D)
        && double.IsFinite(E)
        && double.IsFinite(F);

    internal Spot Apply(Spot p) => new((A * p.X) + (C * p.Y) + E, (B * p.X) + (D * p.Y) + F);

    /// <summary>Applied to a direction: without the shift.</summary>
    internal Spot Turn(Spot v) => new((A * v.X) + (C * v.Y), (B * v.X) + (D * v.Y));

    internal static Matrix Shift(double x, double y) => new(1, 0, 0, 1, x, y);

    internal static Matrix Scale(double x, double y) => new(x, 0, 0, y, 0, 0);

    /// <summary>
    /// Right angles come out exact: the sine and cosine of a multiple of 90 degrees would miss them by a hair.
    /// </summary>
    internal static Matrix Rotate(double degrees)
    {
        var (sin, cos) = (degrees % 360) switch
        {
            0 => (0, 1),
            90 or -270 => (1, 0),
            180 or -180 => (0, -1),
            270 or -90 => (-1, 0),
            _ => Math.SinCos(degrees * Math.PI / 180),
        };
        return new(cos, sin, -sin, cos, 0, 0);
    }

    internal static Matrix Skew(double xDegrees, double yDegrees) =>
        new(1, Math.Tan(yDegrees * Math.PI / 180), Math.Tan(xDegrees * Math.PI / 180), 1, 0, 0);
}
