using System.Numerics;
using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>
/// Numbers the quarters of a stretch of cloth from 0, row by row from the top: for arrays with a place for each. One
/// more all around has a number too: so has all of every square that lies on the cloth with a quarter.
/// </summary>
internal readonly struct QuarterNumbers
{
    private readonly Quarter first;

    internal QuarterNumbers(Box ground)
    {
        Ground = ground.IsEmpty ? new(0, 0, 0, 0) : ground;
        var (start, end) = (Quarter.At(new(Ground.Left, Ground.Top)), Quarter.At(new(Ground.Right, Ground.Bottom)));
        first = new(start.Column - 1, start.Row - 1);
        (Columns, Rows) = (end.Column - first.Column + 2, end.Row - first.Row + 2);
    }

    /// <summary>What they cover, but for those around it.</summary>
    internal Box Ground { get; }

    internal int Columns { get; }

    internal int Rows { get; }

    /// <summary>How many quarters there are.</summary>
    internal int Count => Columns * Rows;

    /// <summary>The number of a quarter.</summary>
    internal int this[Quarter quarter] => ((quarter.Row - first.Row) * Columns) + quarter.Column - first.Column;

    /// <summary>The number of a square's first quarter.</summary>
    internal int this[Square square] => this[new Quarter(square.Column, square.Row)];

    /// <summary>It lies beside the cloth.</summary>
    internal bool IsAround(int number) =>
        number % Columns is var column
        && (column == 0 || column == Columns - 1 || number < Columns || number >= Count - Columns);

    /// <summary>The quarter with a number.</summary>
    internal Quarter this[int number] => new(first.Column + (number % Columns), first.Row + (number / Columns));

    /// <summary>The square that a quarter with a number is the first of.</summary>
    internal Square SquareFrom(int number) => new(this[number].Column, this[number].Row);

    /// <summary>For each square whose first quarter is one of a run, what its quarters hold together.</summary>
    /// <param name="run">Number of the first of them.</param>
    /// <param name="sums">A place for each; beyond the last number there is nothing.</param>
    internal void Sum<T>(SparseArray<T> of, int run, Span<T> sums)
        where T : unmanaged, INumber<T>
    {
        Span<T> above = stackalloc T[SparseArray<T>.Run + 1];
        Span<T> below = stackalloc T[SparseArray<T>.Run + 1];
        of.Read(run, above);
        of.Read(run + Columns, below);
        for (var i = 0; i < sums.Length; i++)
            sums[i] = above[i] + above[i + 1] + below[i] + below[i + 1];
    }

    /// <summary>Adds to places by these numbers what those by others hold, all on the same cloth.</summary>
    internal void Add<T>(SparseArray<T> to, SparseArray<T> from, QuarterNumbers others)
        where T : struct, INumber<T>
    {
        const int Run = SparseArray<int>.Run;
        for (var run = 0; run < others.Count; run += Run)
        {
            if (!from.Keeps(run))
                continue;
            var (place, column) = (this[others[run]], run % others.Columns);
            for (var i = run; i < Math.Min(run + Run, others.Count); i++, place++)
            {
                if (!T.IsZero(from[i]))
                    to.At(place) += from[i];
                if (++column == others.Columns)
                    (place, column) = (place + Columns - others.Columns, 0);
            }
        }
    }
}
