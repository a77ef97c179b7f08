using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>
/// The squares that a stitch lies on with its whole width, and how much it covers of each; a square may come more than
/// once. Thread is laid as lines side by side: a stitch beside a line between squares lies on both. Counted by their
/// middles alone, two or three rows 0.4 mm apart would fall on a square.
/// </summary>
internal struct CoveredSquares
{
    /// <summary>Each stands for 0.1 mm of the thread's width, a step of the tape.</summary>
    private const int Lines = 4;

    private readonly Point from;
    private readonly Point to;
    private readonly int breadth;
    private CrossedSquares crossed;
    private int line;

    /// <param name="breadth">How wide a strip of cloth the thread counts for, µm.</param>
    internal CoveredSquares(Point from, Point to, int breadth)
    {
        (this.from, this.to, this.breadth) = (from, to, breadth);
        if (from == to)
            line = Lines;
        else
            crossed = Line(0);
    }

    /// <summary>A square, and how much of it is covered, µm².</summary>
    public readonly (Square Square, long Area) Current =>
        (crossed.Current.Square, Whole(crossed.Current.Length / Lines * breadth));

    /// <summary>For <c>foreach</c>.</summary>
    public readonly CoveredSquares GetEnumerator() => this;

    /// <summary>Steps on to the next square; false behind the last one.</summary>
    public bool MoveNext()
    {
        while (line < Lines)
        {
            if (crossed.MoveNext())
                return true;
            line++;
            if (line < Lines)
                crossed = Line(line);
        }
        return false;
    }

    private readonly CrossedSquares Line(int number)
    {
        var way = Vector.Between(from, to);
        var aside = ((number + 0.5) / Lines - 0.5) * ThreadGrid.ThreadWidth / way.Length;
        var beside = new Point((int)Whole(-aside * way.Y), (int)Whole(aside * way.X));
        return new(from + beside, to + beside);
    }

    private static long Whole(double value) => (long)Math.Round(value, MidpointRounding.AwayFromZero);
}
