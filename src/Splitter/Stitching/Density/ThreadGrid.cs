using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>
/// Thread and needle holes on every square millimetre of a stretch of cloth. Both are whole numbers, so that the sums
/// are the same in whatever order stitches are counted.
/// </summary>
internal sealed class ThreadGrid
{
    /// <summary>Width of no. 40 thread as it lies on cloth, µm. Common practice, no source.</summary>
    internal const int ThreadWidth = 400;

    /// <summary>
    /// Needle holes on a square millimetre from which on some are left out: spread evenly, as many holes of 0.3 mm
    /// touch each other. Common practice, no source.
    /// </summary>
    internal const int Crowded = 12;

    /// <summary>
    /// Most needle holes on a square millimetre that cloth bears: with more, holes of 0.3 mm lie so much over each
    /// other that hardly a thread of the cloth goes on between them. Common practice, no source.
    /// </summary>
    internal const int MostHoles = 16;

    private readonly QuarterNumbers numbers;

    /// <summary>Square micrometres that thread covers of each quarter.</summary>
    private readonly SparseArray<long> thread;

    private readonly SparseArray<int> holes;

    /// <param name="ground">Penetrations of what is counted lie in it.</param>
    internal ThreadGrid(Box ground)
        : this(new QuarterNumbers(ground.Grown(ThreadWidth))) { }

    private ThreadGrid(QuarterNumbers numbers) =>
        (this.numbers, thread, holes) = (numbers, new(numbers.Count), new(numbers.Count));

    /// <summary>What can be counted lies in it.</summary>
    internal Box Ground => numbers.Ground;

    /// <summary>Row by row from the top: all quarters that have something, and some that have nothing.</summary>
    internal IEnumerable<Quarter> Quarters
    {
        get
        {
            foreach (var i in KeptNumbers)
                if (!numbers.IsAround(i))
                    yield return numbers[i];
        }
    }

    /// <summary>The same of squares.</summary>
    internal IEnumerable<Square> Squares
    {
        get
        {
            var end = numbers.Count - numbers.Columns - 1;
            for (var run = 0; run < end; run += SparseArray<int>.Run)
                if (run == 0 || IsBelowKept(run))
                    for (var i = run; i < Math.Min(run + SparseArray<int>.Run, end); i++)
                        if (numbers[i] is var first && i % numbers.Columns < numbers.Columns - 1)
                            yield return new(first.Column, first.Row);
        }
    }

    /// <summary>How many places are kept in memory.</summary>
    internal long Kept => thread.Kept + holes.Kept;

    /// <summary>Numbers of quarters for which something is kept.</summary>
    private IEnumerable<int> KeptNumbers
    {
        get
        {
            for (var run = 0; run < numbers.Count; run += SparseArray<int>.Run)
                if (Keeps(run))
                    for (var i = run; i < Math.Min(run + SparseArray<int>.Run, numbers.Count); i++)
                        yield return i;
        }
    }

    private bool Keeps(int place) => place < numbers.Count && (thread.Keeps(place) || holes.Keeps(place));

    /// <summary>Something is kept for a quarter of the squares whose first quarters are a run.</summary>
    private bool IsBelowKept(int run) =>
        Keeps(run)
        || Keeps(run + SparseArray<int>.Run)
        || Keeps(run + numbers.Columns)
        || Keeps(run + numbers.Columns + SparseArray<int>.Run);

    /// <summary>What is counted on all of these.</summary>
    internal static ThreadGrid Sum(IReadOnlyCollection<ThreadGrid> parts)
    {
        var sum = new ThreadGrid(new QuarterNumbers(Box.Around(parts.Select(p => p.Ground))));
        foreach (var part in parts)
        foreach (var i in part.KeptNumbers)
        {
            var quarter = sum.numbers[part.numbers[i]];
            if (part.thread[i] is not 0 and var area)
                sum.thread.At(quarter) += area;
            if (part.holes[i] is not 0 and var count)
                sum.holes.At(quarter) += count;
        }
        return sum;
    }

    /// <summary>Layers of thread: a square that is covered once has one.</summary>
    internal double LayersOn(Square square) => ThreadOn(square) / (double)Units.SquareMillimetre;

    /// <summary>What thread covers of a square, µm²: more than it has where there are layers.</summary>
    internal long ThreadOn(Square square)
    {
        var first = numbers[square];
        return thread[first]
            + thread[first + 1]
            + thread[first + numbers.Columns]
            + thread[first + numbers.Columns + 1];
    }

    /// <summary>Layers on the fullest of the squares that lie over a place.</summary>
    internal double LayersAt(Point at) => LayersAt(Quarter.At(at));

    /// <inheritdoc cref="LayersAt(Point)"/>
    internal double LayersAt(Quarter quarter)
    {
        var middle = numbers[quarter];
        var (leftAbove, rightAbove) = Pairs(middle - numbers.Columns);
        var (left, right) = Pairs(middle);
        var (leftBelow, rightBelow) = Pairs(middle + numbers.Columns);
        var fullest = Math.Max(left + Math.Max(leftAbove, leftBelow), right + Math.Max(rightAbove, rightBelow));
        return fullest / (double)Units.SquareMillimetre;

        (long Left, long Right) Pairs(int on) => (thread[on - 1] + thread[on], thread[on] + thread[on + 1]);
    }

    internal int HolesIn(Square square)
    {
        var first = numbers[square];
        return holes[first] + holes[first + 1] + holes[first + numbers.Columns] + holes[first + numbers.Columns + 1];
    }

    /// <summary>Needle holes in that of the squares over a place that has most.</summary>
    internal int HolesAt(Point at) => HolesAt(Quarter.At(at));

    /// <inheritdoc cref="HolesAt(Point)"/>
    internal int HolesAt(Quarter quarter) => quarter.Squares.Max(HolesIn);

    internal void Pierce(Point at) => holes.At(numbers[Quarter.At(at)])++;

    /// <summary>A hole that was counted is not made after all.</summary>
    internal void Close(Point at) => holes.At(numbers[Quarter.At(at)])--;

    /// <param name="breadth">How wide a strip of cloth the thread counts for, µm.</param>
    internal void Lay(Point from, Point to, int breadth)
    {
        foreach (var (quarter, area) in new CoveredQuarters(from, to, breadth))
            thread.At(numbers[quarter]) += area;
    }

    /// <summary>Thread along a way.</summary>
    /// <inheritdoc cref="Lay(Point, Point, int)"/>
    internal void Lay(ReadOnlySpan<Point> way, int breadth)
    {
        for (var i = 1; i < way.Length; i++)
            Lay(way[i - 1], way[i], breadth);
    }

    /// <summary>Thread as well, or out again; how much more then lies beyond so many layers, µm².</summary>
    /// <inheritdoc cref="Lay(Point, Point, int)"/>
    internal long Crowd(Point from, Point to, int breadth, double most)
    {
        var change = new ThreadChange(Box.Around([from, to]), stackalloc long[ThreadChange.FewQuarters]);
        change.Lay(from, to, breadth);
        var more = TooMany(change, most);
        Lay(from, to, breadth);
        return more;
    }

    /// <summary>Whether thread covers some of a square that has more than so many layers.</summary>
    internal bool IsOnMore(Point from, Point to, double most)
    {
        var change = new ThreadChange(Box.Around([from, to]), stackalloc long[ThreadChange.FewQuarters]);
        change.Lay(from, to, ThreadWidth);
        foreach (var (square, _) in change)
            if (LayersOn(square) > most)
                return true;
        return false;
    }

    /// <summary>The same of one more thread along a way that is not laid yet.</summary>
    internal long TooMany(ReadOnlySpan<Point> way, double most)
    {
        var change = new ThreadChange(Box.Around(way), stackalloc long[ThreadChange.FewQuarters]);
        change.Lay(way, ThreadWidth);
        return TooMany(change, most);
    }

    /// <summary>
    /// How much more would lie beyond so many layers, summed over all squares, µm²: a whole number, so that a search
    /// for less comes to an end.
    /// </summary>
    internal long TooMany(ThreadChange change, double most)
    {
        var (borne, sum) = ((long)Math.Round(most * Units.SquareMillimetre), 0L);
        foreach (var (square, by) in change)
            if (ThreadOn(square) is var lying && Math.Max(lying, lying + by) > borne)
                sum += Math.Max(0, lying + by - borne) - Math.Max(0, lying - borne);
        return sum;
    }

    /// <summary>What lies on the fullest square below one more thread along a way, with it, µm².</summary>
    internal long MostBelow(ReadOnlySpan<Point> way)
    {
        var change = new ThreadChange(Box.Around(way), stackalloc long[ThreadChange.FewQuarters]);
        change.Lay(way, ThreadWidth);
        var fullest = 0L;
        foreach (var (square, by) in change)
            fullest = Math.Max(fullest, ThreadOn(square) + by);
        return fullest;
    }

    /// <summary>Squares with more layers or holes than these, those that touch or overlap together; by rows.</summary>
    /// <param name="asked">Among those with one of these quarters; null for all.</param>
    internal IEnumerable<ImmutableArray<Square>> Grounds(double layers, int holes, HashSet<Quarter>? asked = null)
    {
        ImmutableArray<Square> full =
        [
            .. Squares.Where(s =>
                (LayersOn(s) > layers || HolesIn(s) > holes) && (asked is null || s.Quarters.Any(asked.Contains))
            ),
        ];
        var left = full.ToHashSet();
        foreach (var square in full)
        {
            if (!left.Remove(square))
                continue;
            var ground = ImmutableArray.CreateBuilder<Square>();
            ground.Add(square);
            for (var i = 0; i < ground.Count; i++)
                ground.AddRange(ground[i].Around.Where(left.Remove));
            yield return ground.ToImmutable();
        }
    }
}
