using Splitter.Geometry;

namespace Splitter.Stitching.Fills;

/// <summary>
/// The rows of a fill and the penetrations along them, over the whole artwork: a pure function of angle, row spacing and
/// stitch length, so that parts sewn in different hoopings continue the same rows and the same penetrations. A place is
/// counted in rows (t, across) and micrometres (u, along).
/// </summary>
internal sealed class Lattice
{
    /// <summary>
    /// Row k lies at k + 1/2 spacings from the design's origin: a shape flush with the origin, a background say, gets
    /// whole rows of thread and not one that hangs half over its edge.
    /// </summary>
    private const double Middle = 0.5;

    /// <summary>
    /// Rows after which the penetrations repeat, and the share of that cycle by which each is moved from the one before.
    /// At 0.4 mm rows and 4 mm stitches the nearest penetrations are then 1.28 mm apart, 94 % of what any arrangement
    /// allows (a hexagonal one, 1.36 mm), so that the eye finds no furrow in any direction.
    /// </summary>
    private const int Cycle = 8,
        Step = 3;

    /// <summary>
    /// Decimals that sine and cosine are snapped to: platforms differ in the last of their sixteen, and 1e-9 of a metre
    /// is a thousandth of a micrometre.
    /// </summary>
    private const int Decimals = 9;

    /// <summary>How much nearer to its row a penetration must come for each step that it is moved along it, µm.</summary>
    private const double WorthAStep = 2;

    private readonly double cos;
    private readonly double sin;
    private readonly double stitchLength;

    /// <param name="angle">Direction of the rows, degrees clockwise from x.</param>
    /// <param name="spacing">Distance of the rows, µm.</param>
    /// <param name="stitchLength">Distance of penetrations along a row, µm.</param>
    internal Lattice(double angle, int spacing, int stitchLength)
    {
        (sin, cos) = Math.SinCos(angle * Math.PI / 180);
        (sin, cos) = (Math.Round(sin, Decimals), Math.Round(cos, Decimals));
        Spacing = spacing;
        this.stitchLength = stitchLength;
    }

    /// <summary>Distance of the rows, µm.</summary>
    internal double Spacing { get; }

    /// <summary>Where a point lies on the lattice.</summary>
    internal Place PlaceOf(Point p) => new((((p.Y * cos) - (p.X * sin)) / Spacing) - Middle, (p.X * cos) + (p.Y * sin));

    /// <summary>The point on the tape's grid at a place.</summary>
    internal Point PointAt(Place place) => PointAt(place.T, place.U);

    /// <inheritdoc cref="PointAt(Place)"/>
    internal Point PointAt(double t, double u)
    {
        var v = (t + Middle) * Spacing;
        return new(OnTape((u * cos) - (v * sin)), OnTape((u * sin) + (v * cos)));
    }

    /// <summary>
    /// A penetration at or near a place of a row: of some tape steps back and ahead along the row the one that the tape
    /// can hold nearest to it. Only the axis that the row runs along more is free; the other one goes to the row. Rounding
    /// each for itself would leave rows up to 0.07 mm beside their place and open up to seven hundredths of the ground
    /// between them, near 45 degrees however far one steps.
    /// </summary>
    internal Point OnRow(int row, double u, int back, int ahead)
    {
        var v = (row + Middle) * Spacing;
        var (x, y) = ((u * cos) - (v * sin), (u * sin) + (v * cos));
        var flat = Math.Abs(cos) >= Math.Abs(sin);
        var (run, rise, cosine, sine) = flat ? (x, y, cos, sin) : (y, x, sin, cos);
        var (best, least) = (default(Point), double.PositiveInfinity);
        for (var i = -back; i <= ahead; i++)
        {
            var along = OnTape(run) + (i * Math.Sign(cosine) * Units.TapeStep);
            var exact = rise + ((along - run) * sine / cosine);
            var across = OnTape(exact);
            var beside = (Math.Abs(across - exact) * Math.Abs(cosine)) + (Math.Abs(i) * WorthAStep);
            if (beside < least)
                (best, least) = (flat ? new(along, across) : new(across, along), beside);
        }
        return best;
    }

    /// <summary>Distance of two places, µm.</summary>
    internal double Distance(Place a, Place b) => Math.Sqrt(Square(a.U - b.U) + Square((a.T - b.T) * Spacing));

    /// <summary>The penetrations of a row strictly between two places along it, in ascending order.</summary>
    internal IEnumerable<double> Penetrations(int row, double from, double to)
    {
        var phase = (double)((((row % Cycle) + Cycle) * Step) % Cycle) / Cycle;
        for (var j = Math.Floor((from / stitchLength) - phase) + 1; ; j++)
        {
            var u = (j + phase) * stitchLength;
            if (u >= to)
                yield break;
            if (u > from)
                yield return u;
        }
    }

    private static double Square(double d) => d * d;

    // Straight to the tape's grid: going by whole micrometres would round twice.
    private static int OnTape(double micrometres) =>
        (int)(Math.Floor((micrometres / Units.TapeStep) + 0.5) * Units.TapeStep);
}

/// <summary>A place on a <see cref="Lattice"/>: rows across, micrometres along.</summary>
internal readonly record struct Place(double T, double U);
