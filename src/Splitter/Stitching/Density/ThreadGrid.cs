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

    /// <summary>Around most ways no more squares lie: what is noted of them needs no memory of its own.</summary>
    private const int FewSquares = 100;

    /// <summary>Square micrometres that thread covers.</summary>
    private readonly SparseArray<long> thread;

    private readonly SparseArray<int> holes;

    /// <param name="ground">Penetrations of what is counted lie in it.</param>
    internal ThreadGrid(Box ground)
        : this(new SquareNumbers(ground.Grown(ThreadWidth))) { }

    private ThreadGrid(SquareNumbers numbers) =>
        (Numbers, thread, holes) = (numbers, new(numbers.Count), new(numbers.Count));

    /// <summary>Of its squares.</summary>
    internal SquareNumbers Numbers { get; }

    /// <summary>Squares row by row from the top: all that have something, and some that have nothing.</summary>
    internal IEnumerable<Square> Squares => KeptNumbers.Select(i => Numbers[i]);

    /// <summary>How many places are kept in memory.</summary>
    internal long Kept => thread.Kept + holes.Kept;

    /// <summary>Numbers of squares for which something is kept, and the first ones in any case.</summary>
    private IEnumerable<int> KeptNumbers
    {
        get
        {
            for (var run = 0; run < Numbers.Count; run += SparseArray<int>.Run)
                if (run == 0 || thread.Keeps(run) || holes.Keeps(run))
                    for (var i = run; i < Math.Min(run + SparseArray<int>.Run, Numbers.Count); i++)
                        yield return i;
        }
    }

    /// <summary>What is counted on all of these.</summary>
    internal static ThreadGrid Sum(IReadOnlyCollection<ThreadGrid> parts)
    {
        var sum = new ThreadGrid(new SquareNumbers(Box.Around(parts.Select(p => p.Numbers.Ground))));
        foreach (var part in parts)
        foreach (var i in part.KeptNumbers)
        {
            var square = sum.Numbers[part.Numbers[i]];
            if (part.thread[i] is not 0 and var area)
                sum.thread.At(square) += area;
            if (part.holes[i] is not 0 and var count)
                sum.holes.At(square) += count;
        }
        return sum;
    }

    /// <summary>Layers of thread: a square that is covered once has one.</summary>
    internal double LayersOn(Square square) => ThreadOn(square) / (double)Units.SquareMillimetre;

    /// <summary>What thread covers of a square, µm²: more than it has where there are layers.</summary>
    internal long ThreadOn(Square square) => thread[Numbers[square]];

    internal int HolesIn(Square square) => holes[Numbers[square]];

    internal void Pierce(Point at) => holes.At(Numbers[Square.At(at)])++;

    /// <summary>A hole that was counted is not made after all.</summary>
    internal void Close(Point at) => holes.At(Numbers[Square.At(at)])--;

    /// <param name="breadth">How wide a strip of cloth the thread counts for, µm.</param>
    internal void Lay(Point from, Point to, int breadth)
    {
        foreach (var (square, area) in new CoveredSquares(from, to, breadth))
            thread.At(Numbers[square]) += area;
    }

    /// <summary>Thread along a way.</summary>
    /// <inheritdoc cref="Lay(Point, Point, int)"/>
    internal void Lay(ReadOnlySpan<Point> way, int breadth)
    {
        for (var i = 1; i < way.Length; i++)
            Lay(way[i - 1], way[i], breadth);
    }

    /// <summary>Thread as well, or out again; what comes to lie beyond so many layers, µm².</summary>
    /// <inheritdoc cref="Lay(Point, Point, int)"/>
    internal long Crowd(Point from, Point to, int breadth, int most)
    {
        var (borne, more) = (most * (long)Units.SquareMillimetre, 0L);
        foreach (var (square, area) in new CoveredSquares(from, to, breadth))
        {
            ref var lying = ref thread.At(Numbers[square]);
            more -= Math.Max(0, lying - borne);
            lying += area;
            more += Math.Max(0, lying - borne);
        }
        return more;
    }

    /// <summary>Whether thread covers some of a square that has more than so many layers.</summary>
    internal bool IsOnMore(Point from, Point to, int most)
    {
        foreach (var (square, area) in new CoveredSquares(from, to, ThreadWidth))
            if (area > 0 && LayersOn(square) > most)
                return true;
        return false;
    }

    /// <summary>
    /// What one more thread along a way would cover beyond so many layers, summed over the cloth, µm²: a whole number,
    /// so that a search for less comes to an end.
    /// </summary>
    internal long TooMany(ReadOnlySpan<Point> way, int most)
    {
        var (borne, sum) = (most * (long)Units.SquareMillimetre, 0L);
        var near = Near(way);
        Span<long> more = near.Count <= FewSquares ? stackalloc long[FewSquares] : new long[near.Count];
        for (var i = 1; i < way.Length; i++)
            foreach (var (square, area) in new CoveredSquares(way[i - 1], way[i], ThreadWidth))
            {
                ref var on = ref more[near[square]];
                var lying = thread[Numbers[square]] + on;
                sum += Math.Max(0, lying + area - borne) - Math.Max(0, lying - borne);
                on += area;
            }
        return sum;
    }

    /// <summary>What lies on the fullest square below one more thread along a way, with it, µm².</summary>
    internal long MostBelow(ReadOnlySpan<Point> way)
    {
        var (near, fullest) = (Near(way), 0L);
        Span<long> more = near.Count <= FewSquares ? stackalloc long[FewSquares] : new long[near.Count];
        for (var i = 1; i < way.Length; i++)
            foreach (var (square, area) in new CoveredSquares(way[i - 1], way[i], ThreadWidth))
                fullest = Math.Max(fullest, thread[Numbers[square]] + (more[near[square]] += area));
        return fullest;
    }

    /// <summary>All squares that thread along a way may cover.</summary>
    private static SquareNumbers Near(ReadOnlySpan<Point> way) => new(Box.Around(way).Grown(ThreadWidth / 2));

    /// <summary>
    /// Squares with more layers or holes than these, those that touch together; in the order of rows.
    /// </summary>
    /// <param name="asked">Among these; null for all.</param>
    internal IEnumerable<ImmutableArray<Square>> Grounds(double layers, int holes, HashSet<Square>? asked = null)
    {
        ImmutableArray<Square> full =
        [
            .. Squares.Where(s => (LayersOn(s) > layers || HolesIn(s) > holes) && asked?.Contains(s) != false),
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
