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

    /// <summary>Square micrometres that thread covers, by run of squares; null where there is none.</summary>
    private readonly long[]?[] thread;

    /// <summary>The same of needle holes.</summary>
    private readonly int[]?[] holes;

    /// <param name="ground">Penetrations of what is counted lie in it.</param>
    internal ThreadGrid(Box ground)
        : this(new SquareNumbers(ground.Grown(ThreadWidth))) { }

    private ThreadGrid(SquareNumbers numbers) =>
        (Numbers, thread, holes) = (
            numbers,
            new long[numbers.Count / SquareNumbers.Run][],
            new int[numbers.Count / SquareNumbers.Run][]
        );

    /// <summary>Of its squares.</summary>
    internal SquareNumbers Numbers { get; }

    /// <summary>Squares row by row from the top, all that have something and some that have nothing.</summary>
    internal IEnumerable<Square> Squares =>
        from run in Enumerable.Range(0, thread.Length)
        where run == 0 || thread[run] is not null || holes[run] is not null
        from i in Enumerable.Range(run * SquareNumbers.Run, SquareNumbers.Run)
        select Numbers[i];

    /// <summary>How many numbers are kept.</summary>
    internal int Kept => SquareNumbers.Run * (thread.Count(run => run is not null) + holes.Count(run => run is not null));

    /// <summary>What is counted on all of these.</summary>
    internal static ThreadGrid Sum(IReadOnlyCollection<ThreadGrid> parts)
    {
        var sum = new ThreadGrid(new SquareNumbers(Box.Around(parts.Select(p => p.Numbers.Ground))));
        foreach (var part in parts)
            foreach (var square in part.Squares)
            {
                if (part.ThreadOn(square) is not 0 and var area)
                    At(sum.thread, sum.Numbers[square]) += area;
                if (part.HolesIn(square) is not 0 and var count)
                    At(sum.holes, sum.Numbers[square]) += count;
            }
        return sum;
    }

    /// <summary>Layers of thread: a square that is covered once has one.</summary>
    internal double LayersOn(Square square) => ThreadOn(square) / (double)Units.SquareMillimetre;

    internal int HolesIn(Square square) => Of(holes, Numbers[square]);

    internal void Pierce(Point at) => At(holes, Numbers[Square.At(at)])++;

    /// <summary>A hole that was counted is not made after all.</summary>
    internal void Close(Point at) => At(holes, Numbers[Square.At(at)])--;

    /// <param name="breadth">How wide a strip of cloth the thread counts for, µm.</param>
    internal void Lay(Point from, Point to, int breadth)
    {
        foreach (var (square, area) in new CoveredSquares(from, to, breadth))
            At(thread, Numbers[square]) += area;
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
                ThreadOn(on.Key) is var lying
                    ? Math.Max(0, lying + on.Value - borne) - Math.Max(0, lying - borne)
                    : 0
            );
    }

    /// <summary>What lies on the fullest square below one more thread along a way, with it, µm².</summary>
    internal long MostBelow(ReadOnlySpan<Point> way) => Covered(way).Max(on => ThreadOn(on.Key) + on.Value);

    private long ThreadOn(Square square) => Of(thread, Numbers[square]);

    private static T Of<T>(T[]?[] runs, int number)
        where T : struct => runs[number / SquareNumbers.Run] is { } run ? run[number % SquareNumbers.Run] : default;

    private static ref T At<T>(T[]?[] runs, int number) =>
        ref (runs[number / SquareNumbers.Run] ??= new T[SquareNumbers.Run])[number % SquareNumbers.Run];

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
