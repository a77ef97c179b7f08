using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>Which ground each square of a stretch of cloth belongs to, and whether any lies in a box.</summary>
internal sealed class GroundMap
{
    private const int None = -1;

    private readonly SquareNumbers numbers;
    private readonly int[] groundOf;

    /// <summary>For each square the first of itself and all with higher numbers that belongs to a ground.</summary>
    private readonly int[] next;

    /// <param name="numbers">Of all squares that are asked for.</param>
    internal GroundMap(SquareNumbers numbers, ImmutableArray<ImmutableArray<Square>> grounds)
    {
        (this.numbers, groundOf, next) = (numbers, new int[numbers.Count], new int[numbers.Count]);
        Array.Fill(groundOf, None);
        for (var i = 0; i < grounds.Length; i++)
            foreach (var square in grounds[i])
                groundOf[numbers[square]] = i;
        for (var (i, first) = (numbers.Count - 1, numbers.Count); i >= 0; i--)
            next[i] = first = groundOf[i] == None ? first : i;
    }

    /// <summary>The place of the ground that a square belongs to; null when it belongs to none.</summary>
    internal int? GroundOf(Square square) => groundOf[numbers[square]] is var ground && ground != None ? ground : null;

    /// <summary>Whether a square that the box meets belongs to a ground.</summary>
    internal bool Meets(Box box)
    {
        var (first, last) = (Square.At(new(box.Left, box.Top)), Square.At(new(box.Right, box.Bottom)));
        for (var row = first.Row; row <= last.Row; row++)
            if (next[numbers[first with { Row = row }]] <= numbers[last with { Row = row }])
                return true;
        return false;
    }
}
