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
    /// Two blocks in one go where the second begins in the hole in which the first ends, or where a hidden way saves a
    /// trim.
    /// </summary>
    /// <param name="next">Number of the second one's first stitch.</param>
    internal (Block First, Block Second) Joined(Block first, Block second, int next)
    {
        var (from, to) = (Ties.PathEnd(first), Ties.PathStart(second));
        if (from == to)
            return Ties.Joined(first, [from], second);
        if (!JumpOrder.IsTrimmed(first.End, second.Start) || ways.Find(from, to, next) is not { } way)
            return (first, second);
        Count(way, ThreadGrid.ThreadWidth);
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
        var (from, to, burden) = (way[0], way[^1], Burden(way));
        if (
            burden > 0
            && from.DistanceTo(to) >= StitchRules.Shortest
            && ways.Find(from, to, next, mayCrowd: true) is { } other
            && new Polyline(other).Length <= new Polyline(way).Length + Detour
            && Burden(other) < burden
        )
            way = [.. Ties.Hidden(other).Select(s => s.At)];
        Count(way, ThreadGrid.ThreadWidth);
        return way.Skip(1).Select(p => new Stitch(p, StitchUse.Travel));
    }

    /// <summary>Layers too many that a way would make, summed over its length.</summary>
    private double Burden(ImmutableArray<Point> way) =>
        way.Zip(way.Skip(1))
            .SelectMany(leg => ThreadGrid.Crossed(leg.First, leg.Second))
            .Sum(on => on.Length * Math.Max(0, layers.LayersOn(on.Square) + HiddenWays.OneThread - most));

    private void Count(ImmutableArray<Point> way, int breadth)
    {
        for (var i = 1; i < way.Length; i++)
            layers.Lay(way[i - 1], way[i], breadth);
    }
}
