using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>
/// Numbers the squares of a stretch of cloth from 0, row by row from the top: for arrays with a place for each.
/// </summary>
internal sealed class SquareNumbers
{
    private readonly Square first;

    internal SquareNumbers(Box ground)
    {
        Ground = ground.IsEmpty ? new(0, 0, 0, 0) : ground;
        (first, var last) = (Square.At(new(Ground.Left, Ground.Top)), Square.At(new(Ground.Right, Ground.Bottom)));
        (Columns, Rows) = (last.Column - first.Column + 1, last.Row - first.Row + 1);
    }

    /// <summary>What they cover.</summary>
    internal Box Ground { get; }

    internal int Columns { get; }

    internal int Rows { get; }

    /// <summary>How many squares there are.</summary>
    internal int Count => Columns * Rows;

    /// <summary>The number of a square.</summary>
    internal int this[Square square] => ((square.Row - first.Row) * Columns) + square.Column - first.Column;

    /// <summary>The square with a number.</summary>
    internal Square this[int number] => new(first.Column + (number % Columns), first.Row + (number / Columns));
}
