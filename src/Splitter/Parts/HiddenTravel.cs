using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// Travel of the blocks of a part, once it is known what lies over each other: it goes where fewer layers are, and from
/// block to block where that saves a trim.
/// </summary>
/// <param name="layers">Of the whole cloth; what is changed is counted there.</param>
/// <param name="most">Layers that cloth and needle bear.</param>
internal sealed class HiddenTravel(HiddenWays ways, ThreadGrid layers, int most)
{
    /// <summary>How much longer travel may become, µm: what it spreads must not be eaten up by what it adds.</summary>
    private const double Detour = 10 * Units.Millimetre;

    /// <summary>
    /// Most stitches of travel that are kept at an end where no hidden way begins: the search is bounded.
    /// </summary>
    private const int MostKept = 3;

    /// <summary>
    /// Two blocks in one go where the second begins in the hole in which the first ends, or where a hidden way saves a
    /// trim.
    /// </summary>
    /// <param name="next">Number of the second one's first stitch.</param>
    internal (Block First, Block Second) Joined(Block first, Block second, int next)
    {
        var (from, to) = (Ties.PathEnd(first), Ties.PathStart(second));
        ImmutableArray<Point> way = [from];
        if (from != to)
        {
            if (!JumpOrder.IsTrimmed(first.End, second.Start) || ways.Find(from, to, next) is not { } found)
                return (first, second);
            way = found;
        }
        Count(way, ThreadGrid.ThreadWidth);
        Count(Ties.AtEndOf(first), -ThreadGrid.ThreadWidth);
        Count(Ties.AtStartOf(second), -ThreadGrid.ThreadWidth);
        return Ties.Joined(first, way, second);
    }

    /// <summary>The block with other ways where travel makes too many layers.</summary>
    /// <param name="number">Of its first stitch.</param>
    internal Block Spread(Block block, int number)
    {
        var (old, stitches) = (block.Stitches, ImmutableArray.CreateBuilder<Stitch>(block.Stitches.Length));
        for (int i = 0, end; i < old.Length; i = end)
        {
            for (end = i + 1; old[i].Use == StitchUse.Travel && end < old.Length && old[end].Use == StitchUse.Travel; )
                end++;
            if (i > 0 && old[i].Use == StitchUse.Travel)
                stitches.AddRange(Better([.. old[(i - 1)..end].Select(s => s.At)], number + end));
            else
                stitches.Add(old[i]);
        }
        return block with { Stitches = stitches.ToImmutable() };
    }

    /// <summary>The same travel or a better one, its start left out.</summary>
    private IEnumerable<Stitch> Better(ImmutableArray<Point> way, int next)
    {
        Count(way, -ThreadGrid.ThreadWidth);
        if (Burden(way) > 0 && (Other(way, next) ?? OtherWithin(way, next)) is { } other)
            way = other;
        Count(way, ThreadGrid.ThreadWidth);
        return way.Skip(1).Select(p => new Stitch(p, StitchUse.Travel));
    }

    /// <summary>
    /// Where no hidden way is better from end to end, a stretch of the travel may have one, since an end may lie where
    /// nothing is hidden yet. The longest stretch is taken.
    /// </summary>
    private ImmutableArray<Point>? OtherWithin(ImmutableArray<Point> way, int next)
    {
        var stretches =
            from start in Enumerable.Range(0, MostKept + 1)
            from end in Enumerable.Range(0, MostKept + 1)
            where start + end > 0 && start + end < way.Length - 1
            orderby start + end, start
            let other = Other(way[start..^end], next)
            where other is not null
            select way[..start].AddRange(other.Value).AddRange(way[^end..]);
        return stretches.Select(w => (ImmutableArray<Point>?)w).FirstOrDefault();
    }

    /// <summary>Another way between the same ends that makes fewer layers too many; null when there is none.</summary>
    private ImmutableArray<Point>? Other(ImmutableArray<Point> way, int next)
    {
        var (from, to, burden) = (way[0], way[^1], Burden(way));
        return
            burden > 0
            && from.DistanceTo(to) >= StitchRules.Shortest
            && ways.Find(from, to, next, mayCrowd: true) is { } other
            && new Polyline(other).Length <= new Polyline(way).Length + Detour
            && Burden(other) < burden
            ? [.. Ties.Hidden(other).Select(s => s.At)]
            : null;
    }

    /// <summary>Layers too many that a way would make, summed over its length.</summary>
    private double Burden(ImmutableArray<Point> way)
    {
        var sum = 0.0;
        for (var i = 1; i < way.Length; i++)
            foreach (var (square, length) in new CrossedSquares(way[i - 1], way[i]))
                sum += length * Math.Max(0, layers.LayersOn(square) + HiddenWays.OneThread - most);
        return sum;
    }

    private void Count(ImmutableArray<Point> way, int breadth)
    {
        for (var i = 1; i < way.Length; i++)
            layers.Lay(way[i - 1], way[i], breadth);
    }
}
