using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Correcting;

/// <summary>The move that measured offsets ask for, after a stretch.</summary>
internal static class MeasuredMove
{
    /// <summary>
    /// Rounds of filling in what edges do not show: each leaves less than half of the error where two holes are far
    /// apart; where they are near, an edge far away is followed the less.
    /// </summary>
    private const int Rounds = 100;

    /// <summary>A round that moves no place by more than this, µm, is the last.</summary>
    private const double Still = 0.01;

    /// <summary>
    /// Least squares of all that was seen. What an edge does not show is taken to lie where the move lays it, and the
    /// move is sought again (Healy and Westmacott 1956, from memory: missing values in least squares).
    /// </summary>
    internal static RigidMove Best(ImmutableArray<Sighting> seen, GrainStretch stretch)
    {
        var holes = seen.RemoveAll(s => !s.ShowsBothWays);
        var move = RigidMove.Best([.. holes.Select(s => stretch.Of(At(s)))], [.. holes.Select(s => At(s) - s.Offset)]);
        if (holes.Length == seen.Length)
            return move;
        ImmutableArray<Vector> from = [.. seen.Select(s => stretch.Of(At(s)))];
        for (var round = 0; round < Rounds; round++)
        {
            var last = move;
            move = RigidMove.Best(from, [.. seen.Select((s, i) => Target(s, last.Of(from[i])))]);
            if (from.All(p => (move.Of(p) - last.Of(p)).Length <= Still))
                break;
        }
        return move;
    }

    /// <summary>Root mean square of what a move leaves of the offsets, as far as they were seen, µm.</summary>
    internal static double Left(ImmutableArray<Sighting> seen, RigidMove move, GrainStretch stretch) =>
        Math.Sqrt(seen.Select(s => LeftAt(s, move, stretch)).Average(left => left * left));

    /// <summary>The same at one place.</summary>
    internal static double LeftAt(Sighting seen, RigidMove move, GrainStretch stretch)
    {
        var laid = move.Of(stretch.Of(At(seen)));
        return (laid - Target(seen, laid)).Length;
    }

    /// <summary>Where a place should come to lie, if it lies so now.</summary>
    private static Vector Target(Sighting s, Vector laid)
    {
        var should = At(s) - s.Offset;
        return s.Across is { } across ? laid + (across * Vector.Dot(should - laid, across)) : should;
    }

    private static Vector At(Sighting s) => new(s.At.X, s.At.Y);
}
