using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>A square millimetre of cloth by its column and row; square 0, 0 begins at the origin.</summary>
internal readonly record struct Square(int Column, int Row)
{
    /// <summary>Side of a square, µm.</summary>
    internal const int Side = Units.Millimetre;

    internal Point Middle => new((Column * Side) + (Side / 2), (Row * Side) + (Side / 2));

    /// <summary>Those that touch it, at its corners too.</summary>
    internal IEnumerable<Square> Around
    {
        get
        {
            for (var row = Row - 1; row <= Row + 1; row++)
            for (var column = Column - 1; column <= Column + 1; column++)
                if ((column, row) != (Column, Row))
                    yield return new(column, row);
        }
    }

    /// <summary>A point on a line between two squares belongs to the right or lower one.</summary>
    internal static Square At(Point point) => new(Down(point.X), Down(point.Y));

    private static int Down(int micrometres) => (int)Math.Floor(micrometres / (double)Side);
}

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

    /// <summary>
    /// Thread is laid as so many lines side by side, each 0.1 mm, a step of the tape: a stitch beside a line between
    /// squares lies on both. Counted by their middles alone, two or three rows 0.4 mm apart would fall on a square.
    /// </summary>
    private const int Lines = 4;

    private readonly Square first;
    private readonly int columns;
    private readonly long[] thread;
    private readonly int[] holes;

    /// <param name="ground">Penetrations of what is counted lie in it.</param>
    internal ThreadGrid(Box ground)
    {
        ground = ground.IsEmpty ? new(0, 0, 0, 0) : ground.Grown(ThreadWidth);
        (first, var last) = (Square.At(new(ground.Left, ground.Top)), Square.At(new(ground.Right, ground.Bottom)));
        columns = last.Column - first.Column + 1;
        thread = new long[columns * (last.Row - first.Row + 1)];
        holes = new int[thread.Length];
    }

    /// <summary>Squares row by row from the top.</summary>
    internal IEnumerable<Square> Squares =>
        Enumerable
            .Range(0, thread.Length)
            .Select(i => new Square(first.Column + (i % columns), first.Row + (i / columns)));

    /// <summary>Layers of thread: a square that is covered once has one.</summary>
    internal double LayersOn(Square square) => thread[Index(square)] / (double)Units.SquareMillimetre;

    internal int HolesIn(Square square) => holes[Index(square)];

    internal void Pierce(Point at) => holes[Index(Square.At(at))]++;

    /// <summary>A hole that was counted is not made after all.</summary>
    internal void Close(Point at) => holes[Index(Square.At(at))]--;

    /// <param name="breadth">How wide a strip of cloth the thread counts for, µm.</param>
    internal void Lay(Point from, Point to, int breadth)
    {
        foreach (var (square, length) in Under(from, to))
            thread[Index(square)] += Covered(length, breadth);
    }

    /// <summary>The squares that a stitch lies on with its whole width, and how much of it, µm of its length.</summary>
    internal static IEnumerable<(Square Square, double Length)> Under(Point from, Point to)
    {
        var way = Vector.Between(from, to);
        if (way.Length == 0)
            yield break;
        for (var line = 0; line < Lines; line++)
        {
            var aside = ((line + 0.5) / Lines - 0.5) * ThreadWidth / way.Length;
            var (x, y) = (Whole(-aside * way.Y), Whole(aside * way.X));
            foreach (var (square, length) in Crossed(new(from.X + x, from.Y + y), new(to.X + x, to.Y + y)))
                yield return (square, length / Lines);
        }

        static int Whole(double micrometres) => (int)Math.Round(micrometres, MidpointRounding.AwayFromZero);
    }

    /// <summary>Square micrometres.</summary>
    internal static long Covered(double length, int breadth) =>
        (long)Math.Round(length * breadth, MidpointRounding.AwayFromZero);

    /// <summary>
    /// Squares with more layers or holes than these, those that touch together; in the order of rows.
    /// </summary>
    /// <param name="asked">Among these; null for all.</param>
    internal IEnumerable<ImmutableArray<Square>> Grounds(double layers, int holes, HashSet<Square>? asked = null)
    {
        var left = Squares
            .Where(s => (LayersOn(s) > layers || HolesIn(s) > holes) && asked?.Contains(s) != false)
            .ToHashSet();
        foreach (var square in Squares)
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

    /// <summary>The squares that a stitch crosses, and how much of it lies on each, µm.</summary>
    internal static IEnumerable<(Square Square, double Length)> Crossed(Point from, Point to)
    {
        var length = from.DistanceTo(to);
        var (square, done) = (Square.At(from), 0.0);
        while (done < 1)
        {
            var (x, y) = (Leaves(from.X, to.X, square.Column), Leaves(from.Y, to.Y, square.Row));
            var next = Math.Min(1, Math.Min(x, y));
            if (next > done)
                yield return (square, (next - done) * length);
            done = next;
            square = new(
                square.Column + (x <= y ? Math.Sign(to.X - from.X) : 0),
                square.Row + (y <= x ? Math.Sign(to.Y - from.Y) : 0)
            );
        }
    }

    /// <summary>The share of the way at which a stitch leaves a column or row.</summary>
    private static double Leaves(int from, int to, int strip) =>
        from == to ? double.PositiveInfinity
        : to > from ? (((strip + 1.0) * Square.Side) - from) / ((double)to - from)
        : ((strip * (double)Square.Side) - from) / ((double)to - from);

    private int Index(Square square) => ((square.Row - first.Row) * columns) + square.Column - first.Column;
}
