using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// Thread that later stitches of a part hide, once it is known what lies over each other: travel and underlay go where
/// fewer layers are, and travel goes from block to block where that saves a trim.
/// </summary>
/// <param name="layers">Of the whole cloth; what is changed is counted there.</param>
/// <param name="most">Layers that cloth and needle bear.</param>
internal sealed class HiddenTravel(HiddenWays ways, ThreadGrid layers, double most)
{
    /// <summary>How much longer travel may become, µm: what it spreads must not be eaten up by what it adds.</summary>
    private const double Detour = 10 * Units.Millimetre;

    /// <summary>
    /// By how many stitches before and after those that make too many layers a way is looked for that is another one:
    /// the search is bounded.
    /// </summary>
    private static readonly ImmutableArray<(int Before, int After)> Wider =
    [
        .. from before in Enumerable.Range(0, 4) from after in Enumerable.Range(0, 4) select (before, after),
    ];

    /// <summary>
    /// Two blocks in one go where the second begins in the hole in which the first ends, or where a hidden way saves a
    /// trim.
    /// </summary>
    /// <param name="next">Number of the second one's first stitch that covers.</param>
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
        layers.Lay([.. Ties.Hidden(way).Select(s => s.At)], ThreadGrid.ThreadWidth);
        layers.Lay(Ties.AtEndOf(first).AsSpan(), -ThreadGrid.ThreadWidth);
        layers.Lay(Ties.AtStartOf(second).AsSpan(), -ThreadGrid.ThreadWidth);
        return Ties.Joined(first, way, second);
    }

    /// <summary>The block with other ways where what later stitches hide of it makes too many layers.</summary>
    /// <param name="number">Of its first stitch that covers.</param>
    internal Block Spread(Block block, int number)
    {
        var (old, stitches) = (block.Stitches, ImmutableArray.CreateBuilder<Stitch>(block.Stitches.Length));
        stitches.Add(old[0]);
        for (int i = 1, end; i < old.Length; i = end)
        {
            for (end = i + 1; IsHidden(old[i]) && end < old.Length && IsHidden(old[end]); )
                end++;
            if (IsHidden(old[i]))
                stitches.AddRange(Better(old[(i - 1)..end], number).Skip(1));
            else
                stitches.Add(old[i]);
            if (HiddenGround.Covers(old[i]))
                number++;
        }
        return block with { Stitches = stitches.ToImmutable() };
    }

    private static bool IsHidden(Stitch stitch) => stitch.Use is StitchUse.Travel or StitchUse.Underlay;

    /// <summary>The same thread, or with other ways for those of its stitches that make too many layers.</summary>
    private List<Stitch> Better(ImmutableArray<Stitch> old, int next)
    {
        var way = old.ToList();
        for (var at = 1; at < way.Count; at++)
        {
            if (!IsOnMore(at))
                continue;
            var last = at;
            while (last + 1 < way.Count && IsOnMore(last + 1))
                last++;
            at = Replaced(way, at - 1, last, next);
        }
        return way;

        bool IsOnMore(int to) => layers.IsOnMore(way[to - 1].At, way[to].At, most);
    }

    /// <summary>
    /// Another way for some stitches, if need be with a few more before and after them, since an end may lie where
    /// nothing is hidden yet: the one that makes fewest layers too many. Says with which stitch it ends.
    /// </summary>
    private int Replaced(List<Stitch> way, int first, int last, int next)
    {
        var (best, most) = ((From: first, To: last, Way: ImmutableArray<Point>.Empty), 0L);
        foreach (var (before, after) in Wider)
            if (
                first - before is var from
                && last + after is var to
                && from >= 0
                && to < way.Count
                && Other([.. way[from..(to + 1)].Select(s => s.At)], next, most) is { } other
            )
                (best, most) = ((from, to, other.Way), other.Saved);
        if (best.Way.IsEmpty)
            return last;
        layers.Lay([.. way[best.From..(best.To + 1)].Select(s => s.At)], -ThreadGrid.ThreadWidth);
        layers.Lay(best.Way.AsSpan(), ThreadGrid.ThreadWidth);
        way.RemoveRange(best.From + 1, best.To - best.From);
        way.InsertRange(best.From + 1, best.Way.Skip(1).Select(p => new Stitch(p, StitchUse.Travel)));
        return best.From + best.Way.Length - 1;
    }

    /// <summary>
    /// Another way between the same ends, and how many layers too many fewer it makes, µm²; null when there is none
    /// that saves more than another one.
    /// </summary>
    private (ImmutableArray<Point> Way, long Saved)? Other(ImmutableArray<Point> way, int next, long moreThan)
    {
        var (from, to) = (way[0], way[^1]);
        if (from.DistanceTo(to) < StitchRules.Shortest)
            return null;
        layers.Lay(way.AsSpan(), -ThreadGrid.ThreadWidth);
        // No way saves more than there is to save.
        var worth = layers.TooMany(way.AsSpan(), most);
        var found =
            worth > moreThan && ways.Find(from, to, next, mayCrowd: true) is { } other
                ? Ties.Hidden(other).Select(s => s.At).ToImmutableArray()
                : [];
        var saved = found.IsEmpty ? 0 : worth - layers.TooMany(found.AsSpan(), most);
        layers.Lay(way.AsSpan(), ThreadGrid.ThreadWidth);
        return saved > moreThan && new Polyline(found).Length <= new Polyline(way).Length + Detour
            ? (found, saved)
            : null;
    }
}
