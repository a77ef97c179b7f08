using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>
/// Numbers the squares of a stretch of cloth from 0, row by row from the top. Rows are some squares longer
/// than the cloth, so that whole runs of a <see cref="SparseArray{T}"/> make up a row.
/// </summary>
internal sealed class SquareNumbers
{
    private readonly Square first;
    private readonly int columns;

    internal SquareNumbers(Box ground)
    {
        Ground = ground.IsEmpty ? new(0, 0, 0, 0) : ground;
        (first, var last) = (Square.At(new(Ground.Left, Ground.Top)), Square.At(new(Ground.Right, Ground.Bottom)));
        columns = (last.Column - first.Column + SparseArray<int>.Run) / SparseArray<int>.Run * SparseArray<int>.Run;
        Count = columns * (last.Row - first.Row + 1);
    }

    /// <summary>What they cover.</summary>
    internal Box Ground { get; }

    /// <summary>How many squares there are.</summary>
    internal int Count { get; }

    /// <summary>The number of a square.</summary>
    internal int this[Square square] => ((square.Row - first.Row) * columns) + square.Column - first.Column;

    /// <summary>The square with a number.</summary>
    internal Square this[int number] => new(first.Column + (number % columns), first.Row + (number / columns));
}
