using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Runs;

/// <summary>Where lines cross each other between their vertices.</summary>
internal static class Crossings
{
    private readonly record struct Leg(int Line, Point From, Point To)
    {
        internal int Left => Math.Min(From.X, To.X);

        internal int Right => Math.Max(From.X, To.X);
    }

    /// <summary>In the order from left to right of the legs that cross.</summary>
    internal static IEnumerable<Point> Of(ImmutableArray<Polyline> lines)
    {
        // A stable sort; then only legs that overlap from left to right are compared.
        var legs = lines
            .SelectMany((line, i) => line.Points.Zip(line.Points.Skip(1), (from, to) => new Leg(i, from, to)))
            .OrderBy(l => l.Left)
            .ToList();
        for (var i = 0; i < legs.Count; i++)
        for (var j = i + 1; j < legs.Count && legs[j].Left <= legs[i].Right; j++)
            if (legs[i].Line != legs[j].Line && Crossing(legs[i], legs[j]) is { } at)
                yield return at;
    }

    /// <summary>Null where they do not cross, lie along each other, or only touch with an end.</summary>
    private static Point? Crossing(Leg a, Leg b)
    {
        var (way, other, between) = (
            Vector.Between(a.From, a.To),
            Vector.Between(b.From, b.To),
            Vector.Between(a.From, b.From)
        );
        var turn = Vector.Cross(way, other);
        if (turn == 0)
            return null;
        var (share, otherShare) = (Vector.Cross(between, other) / turn, Vector.Cross(between, way) / turn);
        return share is > 0 and < 1 && otherShare is > 0 and < 1 ? a.From.Towards(a.To, share) : null;
    }
}
