using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// Ties another way where the usual one makes too many needle holes or layers: of several forms the one that makes
/// fewest.
/// </summary>
/// <param name="cover">Of the part, before.</param>
/// <param name="layers">Of the whole cloth; what is changed is counted there.</param>
/// <param name="holes">The same of needle holes.</param>
/// <param name="most">Layers that cloth and needle bear.</param>
internal sealed class RoomyTies(CoveredCells cover, ThreadGrid layers, ThreadGrid holes, double most)
{
    /// <summary>Directions in which a tie is tried where later thread hides it.</summary>
    private const int Directions = 16;

    /// <summary>Such a tie is looked at this closely, µm.</summary>
    private const double Stride = 100;

    /// <param name="blocks">Of a part, in sewing order.</param>
    internal void Retie(Block[] blocks)
    {
        for (var i = 0; i < blocks.Length; i++)
            blocks[i] = Retied(blocks[i], i);
    }

    /// <param name="place">Of the block, in the sewing order of its part.</param>
    private Block Retied(Block block, int place)
    {
        if (Ties.IsTiedAtStart(block))
            block = Best(block, Starts(block, cover.FirstOf(place)), ties => Ties.WithStart(block, ties));
        if (Ties.IsTiedAtEnd(block))
            block = Best(block, Ends(block, cover.FirstOf(place + 1)), ties => Ties.WithEnd(block, ties));
        return block;
    }

    /// <param name="forms">The usual one first; each with the hole of the path that it fastens.</param>
    private Block Best(Block block, IEnumerable<ImmutableArray<Point>> forms, Func<ImmutableArray<Point>, Block> with)
    {
        using var all = forms.GetEnumerator();
        all.MoveNext();
        var usual = all.Current;
        TakeOut(usual);
        var (best, least) = (usual, TooMany(usual));
        while (least != default && all.MoveNext())
            if (TooMany(all.Current) is var sum && sum.CompareTo(least) < 0 && !Tears(all.Current, usual))
                (best, least) = (all.Current, sum);
        Put(best);
        return best == usual ? block : with(best);
    }

    /// <summary>
    /// Needle holes, and layers in µm², that are too many with a tie: holes tear the cloth, and count first.
    /// </summary>
    private (int Holes, long Layers) TooMany(ImmutableArray<Point> tie) =>
        (
            Pierced(tie).Sum(on => Math.Max(0, holes.HolesIn(on.Key) + on.Count() - ThreadGrid.MostHoles)),
            layers.TooMany(tie.AsSpan(), most)
        );

    /// <summary>It would make more holes in a place than cloth bears, and more than the usual one.</summary>
    private bool Tears(ImmutableArray<Point> tie, ImmutableArray<Point> usual) =>
        Pierced(tie)
            .Any(on =>
                holes.HolesIn(on.Key) + on.Count() > ThreadGrid.MostHoles
                && on.Count() > usual.Count(p => Quarter.At(p).Squares.Contains(on.Key))
            );

    /// <summary>The squares over its holes, each as often as there are.</summary>
    private static IEnumerable<IGrouping<Square, Square>> Pierced(ImmutableArray<Point> tie) =>
        tie.SelectMany(hole => Quarter.At(hole).Squares).GroupBy(square => square);

    private IEnumerable<ImmutableArray<Point>> Starts(Block block, int first) =>
        Ties.Starts(block).Concat(Aside(Ties.PathStart(block), first).Select(tie => tie.Reverse().ToImmutableArray()));

    private IEnumerable<ImmutableArray<Point>> Ends(Block block, int next) =>
        Ties.Ends(block).Concat(Aside(Ties.PathEnd(block), next));

    /// <summary>Straight away from the path, where stitches from a number on hide all of it.</summary>
    private IEnumerable<ImmutableArray<Point>> Aside(Point end, int from)
    {
        for (var i = 0; i < 2 * Directions; i++)
        {
            var angle = 2 * Math.PI * i / Directions;
            var tie = Ties.Straight(end, new(Math.Cos(angle), Math.Sin(angle)), isSmall: i >= Directions);
            if (IsHidden(tie, from))
                yield return tie;
        }
    }

    /// <summary>
    /// Near the path's end, which may lie on an edge, thread need only be covered: what is sewn begins or ends there.
    /// </summary>
    private bool IsHidden(ImmutableArray<Point> tie, int from)
    {
        var steps = (int)(tie[0].DistanceTo(tie[^1]) / Stride);
        for (var k = 0; k <= steps; k++)
            if (
                tie[0].Towards(tie[^1], (double)k / steps) is var p
                && !(tie[0].DistanceTo(p) < ThreadGrid.ThreadWidth ? cover.IsCovered(p, from) : cover.IsHidden(p, from))
            )
                return false;
        return true;
    }

    private void TakeOut(ImmutableArray<Point> tie)
    {
        layers.Lay(tie.AsSpan(), -ThreadGrid.ThreadWidth);
        foreach (var at in tie)
            holes.Close(at);
    }

    private void Put(ImmutableArray<Point> tie)
    {
        layers.Lay(tie.AsSpan(), ThreadGrid.ThreadWidth);
        foreach (var at in tie)
            holes.Pierce(at);
    }
}
