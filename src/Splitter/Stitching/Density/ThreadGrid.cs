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
    internal IEnumerable<Square> Squares
    {
        get
        {
            for (var run = 0; run < Numbers.Count; run += SparseArray<int>.Run)
                if (run == 0 || thread.Keeps(run) || holes.Keeps(run))
                    for (var i = run; i < run + SparseArray<int>.Run; i++)
                        yield return Numbers[i];
        }
    }

    /// <summary>How many numbers are kept in memory.</summary>
    internal long Kept => thread.Kept + holes.Kept;

    /// <summary>What is counted on all of these.</summary>
    internal static ThreadGrid Sum(IReadOnlyCollection<ThreadGrid> parts)
    {
        var sum = new ThreadGrid(new SquareNumbers(Box.Around(parts.Select(p => p.Numbers.Ground))));
        foreach (var part in parts)
        foreach (var square in part.Squares)
        {
            if (part.ThreadOn(square) is not 0 and var area)
                sum.thread.At(sum.Numbers[square]) += area;
            if (part.HolesIn(square) is not 0 and var count)
                sum.holes.At(sum.Numbers[square]) += count;
        }
        return sum;
    }

    /// <summary>Layers of thread: a square that is covered once has one.</summary>
    internal double LayersOn(Square square) => ThreadOn(square) / (double)Units.SquareMillimetre;

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
        var borne = most * (long)Units.SquareMillimetre;
        return Covered(way)
            .Sum(on =>
                ThreadOn(on.Key) is var lying ? Math.Max(0, lying + on.Value - borne) - Math.Max(0, lying - borne) : 0
            );
    }

    /// <summary>What lies on the fullest square below one more thread along a way, with it, µm².</summary>
    internal long MostBelow(ReadOnlySpan<Point> way) => Covered(way).Max(on => ThreadOn(on.Key) + on.Value);

    private long ThreadOn(Square square) => thread[Numbers[square]];

    private static Dictionary<Square, long> Covered(ReadOnlySpan<Point> way)
    {
        var covered = new Dictionary<Square, long>();
        for (var i = 1; i < way.Length; i++)
            foreach (var (square, area) in new CoveredSquares(way[i - 1], way[i], ThreadWidth))
                covered[square] = covered.GetValueOrDefault(square) + area;
        return covered;
    }

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
