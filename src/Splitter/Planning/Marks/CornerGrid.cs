using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Marks;

/// <summary>
/// Places for corners on the ground that a hooping shares with one donor: for each the best way to lay the arms.
/// </summary>
internal sealed class CornerGrid
{
    /// <summary>
    /// Places looked at: larger common ground is searched more coarsely, so that a large field takes no longer than a
    /// small one.
    /// </summary>
    private const int MostPlaces = 1200;

    /// <summary>Places handed out for a start, spread over the ground.</summary>
    private const int Blocks = 32;

    /// <summary>Distance between places along an arm at which the ground is looked at, µm.</summary>
    private const int ArmStep = Units.Millimetre;

    private readonly CornerCandidate?[] places;
    private readonly Box ground;
    private readonly int step;
    private readonly int columns;
    private readonly int rows;

    /// <param name="common">The ground that all of a corner has to lie on.</param>
    /// <param name="isSewn">There is stitching at a place already.</param>
    /// <param name="isFree">A corner may lie there: it can be told from others and stays in sight.</param>
    internal CornerGrid(
        Box common,
        int donor,
        RegistrationRules rules,
        Func<Point, bool> isSewn,
        Func<Point, bool> isFree
    )
    {
        if (common.IsEmpty)
        {
            places = [];
            return;
        }
        step = Units.OnTape(
            Math.Max(CommonGround.CornerStep, (int)Math.Sqrt((double)common.Width * common.Height / MostPlaces))
        );
        // The first place on the tape's grid that is not outside.
        var (left, top) = (
            Units.OnTape(common.Left + (Units.TapeStep / 2)),
            Units.OnTape(common.Top + (Units.TapeStep / 2))
        );
        ground = common with { Left = left, Top = top };
        (columns, rows) = (
            Math.Max(0, (ground.Right - left + step) / step),
            Math.Max(0, (ground.Bottom - top + step) / step)
        );
        places = new CornerCandidate?[columns * rows];
        for (var i = 0; i < places.Length; i++)
        {
            var at = new Point(left + (i % columns * step), top + (i / columns * step));
            if (isFree(at))
                places[i] = BestArms(common, at, donor, rules, isSewn);
        }
    }

    /// <summary>How many places along the arms of a corner lie on stitching.</summary>
    internal static int Sewn(Point at, Point armX, Point armY, Func<Point, bool> isSewn) =>
        Along(at, armX, isSewn) + Along(at, armY, isSewn);

    /// <summary>From each block of the ground the place with the freest cloth, and of those the outermost.</summary>
    internal IEnumerable<CornerCandidate> Spread()
    {
        if (places.Length == 0)
            yield break;
        var side = Math.Sqrt((double)columns * rows / Blocks);
        var (across, down) = (
            Math.Clamp((int)Math.Round(columns / side), 1, columns),
            Math.Clamp((int)Math.Round(rows / side), 1, rows)
        );
        var middle = ground.Centre;
        for (var y = 0; y < down; y++)
        for (var x = 0; x < across; x++)
        {
            CornerCandidate? best = null;
            for (var row = y * rows / down; row < (y + 1) * rows / down; row++)
            for (var column = x * columns / across; column < (x + 1) * columns / across; column++)
                if (places[(row * columns) + column] is { } place && (best is null || IsBetter(place, best)))
                    best = place;
            if (best is not null)
                yield return best;
        }

        bool IsBetter(CornerCandidate a, CornerCandidate b) =>
            (a.Poor, -a.At.DistanceTo(middle)).CompareTo((b.Poor, -b.At.DistanceTo(middle))) < 0;
    }

    /// <summary>The places around one of this grid, so many steps away.</summary>
    internal IEnumerable<CornerCandidate> Around(Point at, int steps)
    {
        var (column, row) = ((at.X - ground.Left) / step, (at.Y - ground.Top) / step);
        for (var dy = -1; dy <= 1; dy++)
        for (var dx = -1; dx <= 1; dx++)
        {
            var (x, y) = (column + (dx * steps), row + (dy * steps));
            if (
                (dx, dy) != (0, 0)
                && x >= 0
                && x < columns
                && y >= 0
                && y < rows
                && places[(y * columns) + x] is { } place
            )
                yield return place;
        }
    }

    private static CornerCandidate? BestArms(
        Box common,
        Point at,
        int donor,
        RegistrationRules rules,
        Func<Point, bool> isSewn
    )
    {
        CornerCandidate? best = null;
        var least = (Poor: int.MaxValue, Outwards: 0);
        foreach (var (sx, sy) in (ReadOnlySpan<(int, int)>)[(1, 1), (1, -1), (-1, 1), (-1, -1)])
        {
            var (across, down) = (
                Room(sx > 0 ? common.Right - at.X : at.X - common.Left),
                Room(sy > 0 ? common.Bottom - at.Y : at.Y - common.Top)
            );
            // One arm of full length shows how a corner lies; the other may be short.
            if (Math.Min(across, down) < CommonGround.ShortestArm(rules) || Math.Max(across, down) < rules.CornerArm)
                continue;
            var (armX, armY) = (new Point(at.X + (sx * across), at.Y), new Point(at.X, at.Y + (sy * down)));
            // Arms that point to the middle of the ground tell opposite corners apart.
            var middle = common.Centre;
            var outwards = (sx * (middle.X - at.X) >= 0 ? 0 : 1) + (sy * (middle.Y - at.Y) >= 0 ? 0 : 1);
            var missing = ((2 * rules.CornerArm) - across - down + ArmStep - 1) / ArmStep;
            var poor = missing + Sewn(at, armX, armY, isSewn);
            if ((poor, outwards).CompareTo(least) < 0)
                (best, least) = (new(at, armX, armY, donor, poor, false), (poor, outwards));
        }
        return best;

        int Room(int length) => Math.Min(rules.CornerArm, length / Units.TapeStep * Units.TapeStep);
    }

    private static int Along(Point from, Point to, Func<Point, bool> isSewn)
    {
        var steps = Math.Max(1, (int)from.DistanceTo(to) / ArmStep);
        var count = 0;
        for (var i = 0; i <= steps; i++)
            if (isSewn(from.Towards(to, (double)i / steps)))
                count++;
        return count;
    }
}
