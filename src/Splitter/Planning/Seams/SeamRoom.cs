using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// What it costs that a seam has little room beside it: an overlap past it ends at the edge of its field's ground.
/// Distances in µm, prices in millimetres of plain fill.
/// </summary>
internal static class SeamRoom
{
    /// <summary>A seam with more room than this on both sides has enough for its overlap: few are wider.</summary>
    private const double Margin = 3 * Units.Millimetre;

    /// <summary>
    /// A square millimetre of sewn ground right at the edge; less inwards. A seam along the edge itself then costs four
    /// and a half times its length, so that it runs there only when it must.
    /// </summary>
    private const double MarginPrice = 3;

    /// <summary>
    /// A square millimetre for each millimetre less room than in the field with the most: where nothing else decides, the
    /// seam runs through the middle. So little that 15 mm beside the middle cost less than half of what length does.
    /// </summary>
    private const double MiddlePrice = 0.0001;

    /// <summary>Distance of a place from the edges of a ground.</summary>
    internal static double At(double x, double y, Box ground) =>
        Math.Min(Math.Min(x - ground.Left, ground.Right - x), Math.Min(y - ground.Top, ground.Bottom - y));

    /// <summary>The same, leaving out edges where both grounds end: no seam of theirs runs along those.</summary>
    internal static double Between(Point p, Box one, Box other)
    {
        var room = double.PositiveInfinity;
        Count(one.Left != other.Left, p.X - Math.Max(one.Left, other.Left));
        Count(one.Right != other.Right, Math.Min(one.Right, other.Right) - p.X);
        Count(one.Top != other.Top, p.Y - Math.Max(one.Top, other.Top));
        Count(one.Bottom != other.Bottom, Math.Min(one.Bottom, other.Bottom) - p.Y);
        return room;

        void Count(bool counts, double distance) => room = counts ? Math.Min(room, distance) : room;
    }

    /// <summary>A square millimetre of sewn ground at this distance from the edge of the ground of its field.</summary>
    internal static double Shortage(double room) => room >= Margin ? 0 : MarginPrice * (1 - (room / Margin));

    /// <summary>
    /// A millimetre of seam through sewn ground at this distance from the edge: all ground between it and where there is
    /// room enough.
    /// </summary>
    internal static double ShortageOfSeam(double room) =>
        Shortage(room) * (Margin - Math.Min(room, Margin)) / 2 / Units.Millimetre;

    /// <summary>A square millimetre of ground with this much less room than in another field.</summary>
    internal static double Preference(double less) => MiddlePrice * less / Units.Millimetre;

    /// <summary>
    /// How far a field reaches beyond a place before its ground ends on that of others, µm: beyond its remaining edges there
    /// is nothing to overlap.
    /// </summary>
    internal static int Of(ImmutableArray<Box> grounds, int field, ReadOnlySpan<int> others, Point at)
    {
        var ground = grounds[field];
        ReadOnlySpan<(int Room, Point Beyond)> sides =
        [
            (at.X - ground.Left, new(ground.Left - 1, at.Y)),
            (ground.Right - at.X, new(ground.Right + 1, at.Y)),
            (at.Y - ground.Top, new(at.X, ground.Top - 1)),
            (ground.Bottom - at.Y, new(at.X, ground.Bottom + 1)),
        ];
        var room = int.MaxValue;
        foreach (var (distance, beyond) in sides)
        foreach (var other in others)
            if (distance < room && grounds[other].Contains(beyond))
                room = distance;
        return room;
    }
}
