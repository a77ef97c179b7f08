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

    private const int Run = SparseArray<int>.Run;

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
            for (var run = 0; run < numbers.Count; run += Run)
                if (Keeps(run))
                    for (var i = run; i < Math.Min(run + Run, numbers.Count); i++)
                        if (!numbers.IsAround(i))
                            yield return numbers[i];
        }
    }

    /// <summary>The same of squares.</summary>
    internal IReadOnlyList<Square> Squares => Fuller(double.NegativeInfinity);

    /// <summary>How many places are kept in memory.</summary>
    internal long Kept => thread.Kept + holes.Kept;

    private bool Keeps(int place) => place < numbers.Count && (thread.Keeps(place) || holes.Keeps(place));

    /// <summary>Something is kept for a quarter of the squares whose first quarters are a run.</summary>
    private bool IsBelowKept(int run) =>
        Keeps(run) || Keeps(run + Run) || Keeps(run + numbers.Columns) || Keeps(run + numbers.Columns + Run);

    /// <summary>Squares with more layers or needle holes than these, row by row from the top.</summary>
    internal IReadOnlyList<Square> Fuller(double layers, int holes = int.MaxValue)
    {
        var (squares, borne, end) = (new List<Square>(), Borne(layers), numbers.Count - numbers.Columns - 1);
        Span<long> areas = stackalloc long[Run];
        Span<int> pierced = stackalloc int[Run];
        for (var run = 0; run < end; run += Run)
        {
            if (run > 0 && !IsBelowKept(run))
                continue;
            numbers.Sum(thread, run, areas);
            if (holes < int.MaxValue)
                numbers.Sum(this.holes, run, pierced);
            for (var i = 0; i < Math.Min(Run, end - run); i++)
                // The last quarter of a row begins no square.
                if ((areas[i] > borne || pierced[i] > holes) && (run + i + 1) % numbers.Columns != 0)
                    squares.Add(numbers.SquareFrom(run + i));
        }
        return squares;
    }

    /// <summary>So many layers on a square, µm².</summary>
    private static long Borne(double layers) =>
        double.IsInfinity(layers)
            ? layers > 0
                ? long.MaxValue
                : long.MinValue
            : (long)Math.Round(layers * Units.SquareMillimetre);

    /// <summary>Counts as well what another grid has, which lies on this one's ground.</summary>
    internal void Add(ThreadGrid part)
    {
        numbers.Add(thread, part.thread, part.numbers);
        numbers.Add(holes, part.holes, part.numbers);
    }

    /// <summary>Layers of thread: a square that is covered once has one.</summary>
    internal double LayersOn(Square square) => LayersFrom(numbers[square]);

    private double LayersFrom(int first) => ThreadFrom(first) / (double)Units.SquareMillimetre;

    /// <summary>What thread covers of a square, µm²: more than it has where there are layers.</summary>
    internal long ThreadOn(Square square) => ThreadFrom(numbers[square]);

    private long ThreadFrom(int first)
    {
        var (left, right) = thread.Two(first);
        var (leftBelow, rightBelow) = thread.Two(first + numbers.Columns);
        return left + right + leftBelow + rightBelow;
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

        (long Left, long Right) Pairs(int on)
        {
            var (before, own, behind) = thread.Three(on - 1);
            return (before + own, own + behind);
        }
    }

    internal int HolesIn(Square square) => HolesFrom(numbers[square]);

    private int HolesFrom(int first)
    {
        var (left, right) = holes.Two(first);
        var (leftBelow, rightBelow) = holes.Two(first + numbers.Columns);
        return left + right + leftBelow + rightBelow;
    }

    /// <summary>Needle holes in that of the squares over a place that has most.</summary>
    internal int HolesAt(Point at)
    {
        var last = numbers[Quarter.At(at)];
        var above = last - numbers.Columns;
        return Math.Max(
            Math.Max(HolesFrom(above - 1), HolesFrom(above)),
            Math.Max(HolesFrom(last - 1), HolesFrom(last))
        );
    }

    internal void Pierce(Point at) => holes.At(numbers[Quarter.At(at)])++;

    /// <summary>A hole that was counted is not made after all.</summary>
    internal void Close(Point at) => holes.At(numbers[Quarter.At(at)])--;

    /// <param name="breadth">How wide a strip of cloth the thread counts for, µm.</param>
    internal void Lay(Point from, Point to, int breadth) => CoveredQuarters.Count(from, to, breadth, new Counter(this));

    private readonly struct Counter(ThreadGrid grid) : IQuarterCounter
    {
        public void Add(Quarter quarter, long area) => grid.thread.At(grid.numbers[quarter]) += area;
    }

    /// <summary>Thread along a way.</summary>
    /// <inheritdoc cref="Lay(Point, Point, int)"/>
    internal void Lay(ReadOnlySpan<Point> way, int breadth)
    {
        for (var i = 1; i < way.Length; i++)
            Lay(way[i - 1], way[i], breadth);
    }

    /// <summary>Lays thread, or takes it out again, and says what that is by <c>TooMany</c>.</summary>
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
        var box = Box.Around([from, to]);
        if (!IsNearMore(box.Grown(ThreadWidth / 2), most))
            return false;
        var change = new ThreadChange(box, stackalloc long[ThreadChange.FewQuarters]);
        change.Lay(from, to, ThreadWidth);
        foreach (var (square, _) in change)
            if (LayersOn(square) > most)
                return true;
        return false;
    }

    /// <summary>Whether a square that lies over a box, or touches it, has more: mostly none has.</summary>
    private bool IsNearMore(Box box, double most)
    {
        var (first, last) = (Quarter.At(new(box.Left, box.Top)), Quarter.At(new(box.Right, box.Bottom)));
        for (var row = first.Row - 1; row <= last.Row; row++)
        for (var column = first.Column - 1; column <= last.Column; column++)
            if (LayersOn(new(column, row)) > most)
                return true;
        return false;
    }

    /// <summary>By one more thread along a way.</summary>
    /// <inheritdoc cref="TooMany(ThreadChange, double)"/>
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
        var (borne, sum) = (Borne(most), 0L);
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
}
