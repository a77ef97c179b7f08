namespace Splitter.Geometry;

/// <summary>
/// Coordinates in which the rows of a fill are straight and level: u along them, v across them, µm. A quarter turn
/// clockwise leads from u to v, as from x to y on the drawing.
/// </summary>
internal abstract class Frame
{
    /// <summary>Places are as far apart as on the drawing everywhere, and straight lines stay straight.</summary>
    internal abstract bool IsRigid { get; }

    /// <summary>The frame whose rows run across these: its u is v here.</summary>
    internal abstract Frame Across { get; }

    /// <summary>Where a point of the drawing lies.</summary>
    internal abstract (double U, double V) Of(Vector point);

    /// <summary>The point of the drawing at a place.</summary>
    internal abstract Vector At(double u, double v);

    /// <summary>The direction of the row through a place, of length 1.</summary>
    internal abstract Vector Direction(double u, double v);

    /// <summary>How long a micrometre of u is on the drawing.</summary>
    internal virtual double Stretch(double u, double v) => 1;

    /// <summary>
    /// How much the row through a place bends: the reciprocal of its radius, in µm; 0 when it is straight.
    /// </summary>
    internal virtual double Bend(double u, double v) => 0;

    /// <summary>
    /// A straight line of the drawing as places that are joined by straight lines; without its start, with its end.
    /// </summary>
    internal virtual IEnumerable<(double U, double V)> Line(Vector from, Vector to) => [Of(to)];

    /// <inheritdoc cref="Of(Vector)"/>
    internal (double U, double V) Of(Point point) => Of(new Vector(point.X, point.Y));

    /// <summary>A ring of the drawing as one of places.</summary>
    internal IEnumerable<(double U, double V)> Of(Ring ring) =>
        ring.Points.SelectMany(
            (p, i) =>
            {
                var before = ring.Points[(i > 0 ? i : ring.Points.Length) - 1];
                return Line(new(before.X, before.Y), new(p.X, p.Y));
            }
        );
}

/// <summary>Straight rows.</summary>
internal sealed class StraightFrame : Frame
{
    /// <summary>
    /// Decimals that sine and cosine are snapped to: platforms differ in the last of their sixteen, and 1e-9 of a metre
    /// is a thousandth of a micrometre.
    /// </summary>
    private const int Decimals = 9;

    private readonly double angle;
    private readonly double cos;
    private readonly double sin;

    /// <param name="angle">Direction of the rows, degrees clockwise from x.</param>
    internal StraightFrame(double angle)
    {
        this.angle = angle;
        (sin, cos) = Math.SinCos(angle * Math.PI / 180);
        (sin, cos) = (Math.Round(sin, Decimals), Math.Round(cos, Decimals));
    }

    internal override bool IsRigid => true;

    internal override Frame Across => new StraightFrame(angle + 90);

    internal override (double U, double V) Of(Vector point) =>
        ((point.X * cos) + (point.Y * sin), (point.Y * cos) - (point.X * sin));

    internal override Vector At(double u, double v) => new((u * cos) - (v * sin), (u * sin) + (v * cos));

    internal override Vector Direction(double u, double v) => new(cos, sin);
}
