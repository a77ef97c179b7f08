using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Satins;

/// <summary>
/// Ways from column to column over their joints, straight wherever that is covered too and shows no more. Where many
/// columns meet, as in the middle of a star, thread would else lie from joint to joint again and again.
/// </summary>
/// <param name="covered">Whether columns cover a place: a way over bare cloth is none.</param>
internal sealed class JointWays(Func<double, double, bool> covered)
{
    /// <summary>The way between two columns is looked at this closely, µm: less than a thread's width.</summary>
    private const double Step = 100;

    /// <summary>The corners to go to, the last one included.</summary>
    /// <param name="way">With its start.</param>
    /// <param name="isHidden">Whether satin to come hides a place.</param>
    internal IEnumerable<Point> Straight(ImmutableArray<Point> way, Func<Point, bool> isHidden)
    {
        for (var at = 0; at < way.Length - 1; )
        {
            var next = way.Length - 1;
            while (next > at + 1 && !IsBetterStraight(way[at..(next + 1)], isHidden))
                next--;
            if (way[next] != way[at])
                yield return way[next];
            at = next;
        }
    }

    /// <summary>Whether all of a straight way is covered.</summary>
    internal bool IsCovered(Point from, Point to) => Places(from, to).All(p => covered(p.X, p.Y));

    private bool IsBetterStraight(ImmutableArray<Point> way, Func<Point, bool> isHidden) =>
        IsCovered(way[0], way[^1])
        && Places(way[0], way[^1]).Count(p => !isHidden(p))
            <= way.Zip(way.Skip(1)).Sum(leg => Places(leg.First, leg.Second).Count(p => !isHidden(p)));

    private static IEnumerable<Point> Places(Point from, Point to)
    {
        var count = Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) / Step));
        return Enumerable.Range(0, count + 1).Select(k => from.Towards(to, (double)k / count));
    }
}
