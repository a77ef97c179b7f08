using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>
/// The quarters that a stitch lies on with its whole width, and how much it covers of each; a quarter may come more
/// than once. Thread is laid as lines side by side: a stitch beside a line between quarters lies on both. Counted by
/// their middles alone, one or two rows 0.4 mm apart would fall on a quarter.
/// </summary>
internal struct CoveredQuarters
{
    /// <summary>Each stands for 0.1 mm of the thread's width, a step of the tape.</summary>
    private const int Lines = 4;

    private readonly Point from;
    private readonly Vector way;
    private readonly double length;
    private readonly int breadth;
    private CrossedQuarters crossed;
    private int line;

    /// <param name="breadth">How wide a strip of cloth the thread counts for, µm.</param>
    internal CoveredQuarters(Point from, Point to, int breadth)
    {
        (this.from, this.breadth, way) = (from, breadth, Vector.Between(from, to));
        length = way.Length;
        if (length == 0)
        {
            line = Lines;
            return;
        }
        crossed = CrossedQuarters.Along(from, to, length);
        Begin();
    }

    /// <summary>A quarter, and how much of it is covered, µm².</summary>
    public readonly (Quarter Quarter, long Area) Current =>
        (crossed.Current.Quarter, Whole(crossed.Current.Length / Lines * breadth));

    /// <summary>For <c>foreach</c>.</summary>
    public readonly CoveredQuarters GetEnumerator() => this;

    /// <summary>Steps on to the next quarter; false behind the last one.</summary>
    public bool MoveNext()
    {
        while (line < Lines)
        {
            if (crossed.MoveNext())
                return true;
            line++;
            Begin();
        }
        return false;
    }

    /// <summary>Begins a line.</summary>
    private void Begin()
    {
        var aside = ((line + 0.5) / Lines - 0.5) * ThreadGrid.ThreadWidth / length;
        crossed.Begin(new(from.X + (int)Whole(-aside * way.Y), from.Y + (int)Whole(aside * way.X)));
    }

    private static long Whole(double value) => (long)Math.Round(value, MidpointRounding.AwayFromZero);
}
