using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>How much room an overlap has.</summary>
internal static class SeamRoom
{
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
