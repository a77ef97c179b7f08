using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;

namespace Splitter.Parts;

/// <summary>
/// A block in an order that is being sought: the needle's stay between two jumps, one way or another.
/// </summary>
internal sealed class Stay(Block block, int piece)
{
    private readonly ImmutableArray<Point> line = block.Line;
    private bool turned;
    private int hole;

    /// <summary>Which way it is sewn.</summary>
    internal (bool Turned, int Hole) Way
    {
        get => (turned, hole);
        set => (turned, hole) = value;
    }

    internal int Piece => piece;

    internal Point Entry =>
        line.IsEmpty ? block.Start
        : IsLoop ? line[hole]
        : line[turned ? ^1 : 0];

    internal Point Exit =>
        line.IsEmpty ? block.End
        : IsLoop ? line[hole]
        : line[turned ? 0 : ^1];

    /// <summary>It may be sewn from its other end.</summary>
    internal bool Turns => !line.IsEmpty && !IsLoop;

    /// <summary>It may begin at any of its holes.</summary>
    internal bool IsLoop { get; } = !block.Line.IsEmpty && block.Line[0] == block.Line[^1];

    /// <summary>At how many holes it may begin.</summary>
    internal int Holes => IsLoop ? line.Length - 1 : 1;

    internal void Turn() => turned ^= Turns;

    /// <summary>Where the needle may come to it.</summary>
    internal ImmutableArray<Point> Places =>
        line.IsEmpty ? [block.Start]
        : IsLoop ? line
        : [line[0], line[^1]];

    /// <summary>Begins where it is nearest.</summary>
    internal void TurnTo(Point from)
    {
        if (IsLoop)
            BeginBetween(from, null);
        else if (Turns && JumpOrder.Cost(from, Exit) < JumpOrder.Cost(from, Entry))
            Turn();
    }

    /// <summary>A loop begins and ends where both jumps together are least.</summary>
    internal void BeginBetween(Point? from, Point? to)
    {
        var least = double.PositiveInfinity;
        for (var i = 0; i < line.Length - 1; i++)
        {
            var cost =
                (from is { } a ? JumpOrder.Cost(a, line[i]) : 0) + (to is { } b ? JumpOrder.Cost(line[i], b) : 0);
            if (cost < least)
                (hole, least) = (i, cost);
        }
    }

    /// <summary>The block as it is sewn so.</summary>
    internal Block Sewn() =>
        turned ? RunStitcher.Sewn(block.Of, [.. line.Reverse()])!
        : hole > 0 ? RunStitcher.Sewn(block.Of, [.. line[hole..], .. line[1..(hole + 1)]])!
        : block;
}
