using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Cutting;

/// <summary>
/// Which stretches of a line that seams cut are worth sewing. One that lies within the overlap and nowhere in the
/// hooping's own territory is the neighbour's; so is a scrap that the neighbour's overlap holds anyway.
/// </summary>
internal sealed class LineShares
{
    /// <summary>
    /// Less of its own than this, µm, is a scrap: shorter than any stitch that lies well, and tied at both ends it
    /// would be nothing but knots. Common practice, no source.
    /// </summary>
    private const int Scrap = 1500;

    /// <summary>Lengths that snapping to whole micrometres makes of nothing, µm.</summary>
    private const double Nothing = 5;

    private readonly PathClipping[] own;
    private readonly PathClipping[] reach;

    /// <param name="ground">Which of a reach it is about.</param>
    internal LineShares(ImmutableArray<Reach> reaches, Func<Reach, Region> ground)
    {
        own = [.. reaches.Select(r => new PathClipping(r.Territory))];
        reach = [.. reaches.Select(r => new PathClipping(ground(r)))];
    }

    /// <summary>The ground of lines of a hooping.</summary>
    internal PathClipping Of(int hooping) => reach[hooping];

    /// <param name="stretch">The part of a line that lies within the reach of a hooping.</param>
    internal bool IsWorthSewing(int hooping, Polyline line, Polyline stretch)
    {
        var mine = own[hooping].Inside(stretch).Where(l => l.Length > Nothing).ToList();
        if (mine.Sum(l => l.Length) >= Scrap)
            return true;
        return mine.Exists(part => !Enumerable.Range(0, own.Length).Any(h => h != hooping && Holds(h, line, part)));
    }

    /// <summary>Another hooping sews this part along with something of its own.</summary>
    private bool Holds(int hooping, Polyline line, Polyline part) =>
        reach[hooping].Inside(part).Sum(l => l.Length) >= part.Length - Nothing
        && reach[hooping]
            .Inside(line)
            .Any(stretch =>
                Passes(stretch, part.Points[0]) && own[hooping].Inside(stretch).Sum(l => l.Length) >= Scrap
            );

    private static bool Passes(Polyline line, Point at)
    {
        for (var i = 1; i < line.Points.Length; i++)
        {
            var (way, to) = (
                Vector.Between(line.Points[i - 1], line.Points[i]),
                Vector.Between(line.Points[i - 1], at)
            );
            var square = Vector.Dot(way, way);
            var share = square == 0 ? 0 : Math.Clamp(Vector.Dot(to, way) / square, 0, 1);
            if ((to - (way * share)).Length <= Nothing)
                return true;
        }
        return false;
    }
}
