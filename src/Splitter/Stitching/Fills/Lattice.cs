using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Stitching.Fills;

/// <summary>
/// The rows of a fill and the penetrations along them, over the whole artwork: a pure function of how a shape is sewn,
/// so that parts sewn in different hoopings continue the same rows and the same penetrations. A place is
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
    /// How much nearer to its row a penetration must come for each step that it is moved along it, µm.
    /// </summary>
    private const double WorthAStep = 2;

    private readonly Frame frame;
    private readonly double step;
    private readonly Stagger stagger;
    private readonly Bows bows;

    /// <param name="frame">Coordinates along and across the rows.</param>
    /// <param name="spacing">Distance of the rows, µm.</param>
    /// <param name="stitchLength">Longest stitch along a row, µm.</param>
    /// <param name="ground">That curved rows are for: their penetrations are set for all of it.</param>
    /// <param name="stagger">The usual one if nothing is said.</param>
    internal Lattice(Frame frame, int spacing, int stitchLength, Region ground, Stagger? stagger = null)
    {
        (this.frame, Spacing, StitchLength) = (frame, spacing, stitchLength);
        this.stagger = stagger ?? Stagger.Usual;
        bows = new(frame, stitchLength);
        step = frame.IsRigid ? stitchLength : bows.StepOn(ground);
    }

    /// <summary>The rows of a fill, the same for all its pieces.</summary>
    internal static Lattice Of(FillShape shape) =>
        new(shape.Style.Rows, shape.Style.RowSpacing, shape.Style.StitchLength, shape.Footprint, shape.Style.Stagger);

    /// <summary>Distance of the rows, µm.</summary>
    internal double Spacing { get; }

    /// <summary>Longest stitch along a row, µm.</summary>
    internal double StitchLength { get; }

    /// <inheritdoc cref="Frame.IsRigid"/>
    internal bool IsRigid => frame.IsRigid;

    /// <summary>Where a point lies on the lattice.</summary>
    internal Place PlaceOf(Point p) => ToPlace(frame.Of(p));

    /// <summary>A ring on the lattice.</summary>
    internal Place[] PlacesOf(Ring ring) =>
        IsRigid ? [.. ring.Points.Select(PlaceOf)] : [.. frame.Of(ring).Select(ToPlace)];

    /// <summary>The point on the tape's grid at a place.</summary>
    internal Point PointAt(Place place) => PointAt(place.T, place.U);

    /// <inheritdoc cref="PointAt(Place)"/>
    internal Point PointAt(double t, double u)
    {
        var (x, y) = frame.At(u, AcrossAt(t));
        return new(OnTape(x), OnTape(y));
    }

    /// <summary>How far u moves for a length along a row on the drawing, µm.</summary>
    internal double Along(double t, double u, double length) => length / frame.Stretch(u, AcrossAt(t));

    /// <summary>A way with so many corners more that the straight lines between them keep to curved rows.</summary>
    internal ImmutableArray<Place> Divided(ImmutableArray<Place> way) =>
        IsRigid ? way : [way[0], .. way.Zip(way.Skip(1)).SelectMany(leg => Bows.Divided(leg.First, leg.Second))];

    /// <summary>A straight stitch between two points as a way on the lattice; its ends are given.</summary>
    internal ImmutableArray<Place> Straight(Place from, Place to) =>
        IsRigid ? [from, to] : [from, .. frame.Line(At(from), At(to)).SkipLast(1).Select(ToPlace), to];

    /// <summary>
    /// A penetration at or near a place of a row: of some tape steps back and ahead along the row the one that the tape
    /// can hold nearest to it. Only the axis that the row runs along more is free; the other one goes to the row.
    /// Rounding each for itself would leave rows up to 0.07 mm beside their place and open up to seven hundredths of
    /// the ground between them, near 45 degrees however far one steps.
    /// </summary>
    internal Point OnRow(int row, double u, int back, int ahead)
    {
        var v = AcrossAt(row);
        var (x, y) = frame.At(u, v);
        var (cos, sin) = frame.Direction(u, v);
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
        var phase = stagger.Of(row);
        // Of curved rows the stretch between two of these may need more, also the one that begins before the first.
        for (var j = Math.Floor((from / step) - phase) + (IsRigid ? 1 : 0); ; j++)
        {
            var u = (j + phase) * step;
            if (u >= to)
                yield break;
            if (u > from)
                yield return u;
            if (!IsRigid)
                foreach (var between in bows.Between(AcrossAt(row), u, (j + 1 + phase) * step))
                    if (between > from && between < to)
                        yield return between;
        }
    }

    private double AcrossAt(double t) => (t + Middle) * Spacing;

    private Place ToPlace((double U, double V) at) => new((at.V / Spacing) - Middle, at.U);

    private Vector At(Place place) => frame.At(place.U, AcrossAt(place.T));

    private static double Square(double d) => d * d;

    // Straight to the tape's grid: going by whole micrometres would round twice.
    private static int OnTape(double micrometres) =>
        (int)(Math.Floor((micrometres / Units.TapeStep) + 0.5) * Units.TapeStep);
}

/// <summary>A place on a <see cref="Lattice"/>: rows across, micrometres along.</summary>
internal readonly record struct Place(double T, double U);
