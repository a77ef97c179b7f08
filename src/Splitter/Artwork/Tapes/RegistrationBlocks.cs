using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Tapes;

/// <summary>
/// Finds out whether a tape is a part of a work that was split before: such a one has a step of nothing but corners,
/// two or more, to set a part by.
/// </summary>
internal static class RegistrationBlocks
{
    /// <summary>A part is set by so many corners at least.</summary>
    private const int FewestCorners = 2;

    /// <summary>Arms are as long as each other but for rounding to the tape, µm.</summary>
    private const double Rounding = 2 * Units.TapeStep;

    /// <summary>The first block of corners; null for a design of its own.</summary>
    internal static ColourBlock? First(TapeSheet sheet) =>
        sheet.Blocks.FirstOrDefault(block =>
            block.Threads.Length >= FewestCorners && block.Threads.All(thread => IsCorner(thread.Holes))
        );

    /// <summary>One arm level and one upright, as long as each other, with nothing else.</summary>
    private static bool IsCorner(ImmutableArray<Point> holes)
    {
        if (holes.Length < 3)
            return false;
        var meeting = new Point(holes[0].X, holes[^1].Y);
        if (!holes.Contains(meeting))
            meeting = new(holes[^1].X, holes[0].Y);
        var at = holes.IndexOf(meeting);
        return at > 0
            && at < holes.Length - 1
            && Math.Abs(holes[0].DistanceTo(meeting) - meeting.DistanceTo(holes[^1])) <= Rounding
            && IsStraight(holes[..(at + 1)])
            && IsStraight(holes[at..]);
    }

    /// <summary>Level or upright, and on and on in one direction.</summary>
    private static bool IsStraight(ImmutableArray<Point> holes)
    {
        var length = 0.0;
        for (var i = 1; i < holes.Length; i++)
            length += holes[i - 1].DistanceTo(holes[i]);
        return (holes.All(h => h.X == holes[0].X) || holes.All(h => h.Y == holes[0].Y))
            && length <= holes[0].DistanceTo(holes[^1]) + 1;
    }
}
