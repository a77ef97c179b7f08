using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>
/// The middle of a star: where many arms meet, none runs through, and each has the ground that is nearer to its own
/// direction than to any other's. Their columns then end on the bisectors between them. At the centre there is no room
/// for all: they end round a disc, which the first one covers.
/// </summary>
internal sealed class Sectors
{
    /// <summary>
    /// From this many arms on a joint is a star's; of fewer, one column runs through and the others end on it.
    /// </summary>
    internal const int FewestArms = 5;

    /// <summary>
    /// How far each column reaches over a bisector, µm: its neighbour does the same, and both by their pull as well.
    /// More makes the middle of a star thick.
    /// </summary>
    private const double Overlap = ColumnEnds.SideOverlap / 4;

    /// <summary>
    /// Arms end where they would be narrower than this in the mean, µm: they would be little but overlap.
    /// </summary>
    private const double Narrowest = 2 * ColumnEnds.SideOverlap;

    private readonly Point centre;
    private readonly ImmutableArray<Vector> arms;

    /// <summary>Radius of the disc at the centre, µm.</summary>
    private readonly double disc;

    /// <param name="centre">Where the arms meet.</param>
    /// <param name="arms">Unit directions in which the arms leave.</param>
    internal Sectors(Point centre, IEnumerable<Vector> arms)
    {
        this.centre = centre;
        this.arms = [.. arms.OrderBy(a => a.Y).ThenBy(a => a.X)];
        disc = Narrowest / 2 / Math.Tan(Math.PI / this.arms.Length);
    }

    /// <summary>What an arm has of a rung, overlap included; null where it has nothing.</summary>
    internal Rung? Own(Rung rung, Vector arm)
    {
        var distance = Vector.Dot(Vector.Between(centre, rung.Middle), arm);
        return distance >= disc ? Sector(rung, arm)
            : arm == arms[0] ? Chord(rung, distance)
            : null;
    }

    private Rung? Sector(Rung rung, Vector arm)
    {
        var (from, to) = (0.0, 1.0);
        foreach (var away in arms.Where(a => a != arm).Select(a => arm - a))
        {
            var (left, right) = (
                Vector.Dot(Vector.Between(centre, rung.Left), away),
                Vector.Dot(Vector.Between(centre, rung.Right), away)
            );
            if (left < 0 && right < 0)
                return null;
            if (left < 0)
                from = Math.Max(from, left / (left - right));
            else if (right < 0)
                to = Math.Min(to, left / (left - right));
        }
        return from < to ? Part(rung, from * rung.Width - Overlap, to * rung.Width + Overlap) : null;
    }

    /// <summary>A rung's part over the disc.</summary>
    private Rung? Chord(Rung rung, double distance)
    {
        var square = ((disc + Overlap) * (disc + Overlap)) - (distance * distance);
        if (square <= 0)
            return null;
        var middle = Vector.Dot(Vector.Between(rung.Left, centre), Vector.Between(rung.Left, rung.Right).Unit);
        return Part(rung, middle - Math.Sqrt(square), middle + Math.Sqrt(square));
    }

    /// <summary>Between two distances from its left end, as far as it goes.</summary>
    private static Rung? Part(Rung rung, double from, double to)
    {
        (from, to) = (Math.Max(0, from / rung.Width), Math.Min(1, to / rung.Width));
        return from < to ? rung.Part(from, to) : null;
    }
}
