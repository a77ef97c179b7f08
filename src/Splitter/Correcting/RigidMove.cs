using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Correcting;

/// <summary>A turn about a place and a shift: what moves cloth as a whole and stretches nothing.</summary>
/// <param name="About">The place that the turn leaves where it is, µm.</param>
/// <param name="Shift">How far that place moves, µm.</param>
/// <param name="Angle">Radians, clockwise as seen on the drawing.</param>
internal sealed record RigidMove(Vector About, Vector Shift, double Angle)
{
    /// <summary>
    /// Decimals that the angle, its sine and cosine are snapped to: machines differ in the last of their sixteen, and
    /// 1e-9 of a metre is a thousandth of a micrometre.
    /// </summary>
    private const int Decimals = 9;

    private readonly (double Sin, double Cos) turn = (
        Math.Round(Math.Sin(Angle), Decimals),
        Math.Round(Math.Cos(Angle), Decimals)
    );

    /// <summary>
    /// The move that brings places onto others with the least sum of squared distances: Umeyama 1991, IEEE TPAMI
    /// 13(4):376-380, without its scale. In the plane the angle follows from the sums of cross and dot products about
    /// the centroids, and a mirrored answer cannot come out.
    /// </summary>
    /// <param name="from">At least two different places, µm.</param>
    /// <param name="to">Where each should come, µm.</param>
    internal static RigidMove Best(ImmutableArray<Vector> from, ImmutableArray<Vector> to)
    {
        var (a, b) = (Middle(from), Middle(to));
        var (cross, dot) = (0.0, 0.0);
        foreach (var (p, q) in from.Zip(to))
            (cross, dot) = (cross + Vector.Cross(p - a, q - b), dot + Vector.Dot(p - a, q - b));
        return new(a, b - a, Math.Round(Math.Atan2(cross, dot), Decimals));
    }

    /// <summary>Where a place comes to lie.</summary>
    internal Vector Of(Vector place)
    {
        var d = place - About;
        return About + Shift + new Vector((d.X * turn.Cos) - (d.Y * turn.Sin), (d.X * turn.Sin) + (d.Y * turn.Cos));
    }

    /// <inheritdoc cref="Of(Vector)"/>
    internal Point Of(Point place) => Of(new Vector(place.X, place.Y)).From(default);

    private static Vector Middle(ImmutableArray<Vector> places) =>
        places.Aggregate(default(Vector), (sum, p) => sum + p) * (1.0 / places.Length);
}
