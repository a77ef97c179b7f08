using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// Ties another way where the usual one makes too many layers: of several forms the one that makes fewest, and no more
/// needle holes than cloth bears.
/// </summary>
/// <param name="ground">What the part hides.</param>
/// <param name="layers">Of the whole cloth; what is changed is counted there.</param>
/// <param name="holes">The same of needle holes.</param>
/// <param name="most">Layers that cloth and needle bear.</param>
internal sealed class RoomyTies(HiddenGround ground, ThreadGrid layers, ThreadGrid holes, int most)
{
    /// <summary>Directions in which a tie is tried where later thread hides it.</summary>
    private const int Directions = 16;

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
            block = Best(block, Starts(block, ground.FirstOf(place)), ties => Ties.WithStart(block, ties));
        if (Ties.IsTiedAtEnd(block))
            block = Best(block, Ends(block, ground.FirstOf(place + 1)), ties => Ties.WithEnd(block, ties));
        return block;
    }

    /// <param name="forms">The usual one first; each with the hole of the path that it fastens.</param>
    private Block Best(Block block, IEnumerable<ImmutableArray<Point>> forms, Func<ImmutableArray<Point>, Block> with)
    {
        using var all = forms.GetEnumerator();
        all.MoveNext();
        var usual = all.Current;
        Count(usual, -ThreadGrid.ThreadWidth);
        var (best, least) = (usual, TooMany(usual));
        while (least > 0 && all.MoveNext())
            if (TooMany(all.Current) is var sum && sum < least && !Tears(all.Current, usual))
                (best, least) = (all.Current, sum);
        Count(best, ThreadGrid.ThreadWidth);
        if (best == usual)
            return block;
        foreach (var at in usual)
            holes.Close(at);
        foreach (var at in best)
            holes.Pierce(at);
        return with(best);
    }

    /// <summary>In place of the usual tie this one would make more holes in a place than cloth bears.</summary>
    private bool Tears(ImmutableArray<Point> tie, ImmutableArray<Point> usual) =>
        tie.GroupBy(Square.At)
            .Any(on =>
                holes.HolesIn(on.Key) + on.Count() - usual.Count(p => Square.At(p) == on.Key) > ThreadGrid.MostHoles
            );

    private IEnumerable<ImmutableArray<Point>> Starts(Block block, int first) =>
        Ties.Starts(block).Concat(Aside(Ties.PathStart(block), first).Select(tie => tie.Reverse().ToImmutableArray()));

    private IEnumerable<ImmutableArray<Point>> Ends(Block block, int next) =>
        Ties.Ends(block).Concat(Aside(Ties.PathEnd(block), next));

    /// <summary>Straight away from the path, where stitches from a number on hide all of it.</summary>
    private IEnumerable<ImmutableArray<Point>> Aside(Point end, int from)
    {
        for (var i = 0; i < Directions; i++)
        {
            var angle = 2 * Math.PI * i / Directions;
            var tie = Ties.Straight(end, new(Math.Cos(angle), Math.Sin(angle)));
            if (tie.All(p => ground.Holds(p) && ground.IsHidden(ground.At(p), from)))
                yield return tie;
        }
    }

    /// <summary>Layers too many that a tie would make, summed over the cloth, mm².</summary>
    private double TooMany(ImmutableArray<Point> tie)
    {
        var covered = new Dictionary<Square, long>();
        for (var i = 1; i < tie.Length; i++)
            foreach (var (square, area) in new CoveredSquares(tie[i - 1], tie[i], ThreadGrid.ThreadWidth))
                covered[square] = covered.GetValueOrDefault(square) + area;
        return covered.Sum(on =>
            Math.Max(0, layers.LayersOn(on.Key) + (on.Value / (double)Units.SquareMillimetre) - most)
            - Math.Max(0, layers.LayersOn(on.Key) - most)
        );
    }

    private void Count(ImmutableArray<Point> tie, int breadth)
    {
        for (var i = 1; i < tie.Length; i++)
            layers.Lay(tie[i - 1], tie[i], breadth);
    }
}
