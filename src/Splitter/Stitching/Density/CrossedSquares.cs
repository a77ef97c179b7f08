using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>
/// The squares that a line crosses, one after the other, and how much of it lies on each. It runs through all thread of
/// a work several times, so it is a value that steps on without a call for each square.
/// </summary>
internal struct CrossedSquares
{
    private readonly double length;
    private Axis x;
    private Axis y;
    private double done;

    internal CrossedSquares(Point from, Point to)
    {
        var square = Square.At(from);
        length = from.DistanceTo(to);
        (x, y) = (new(from.X, to.X, square.Column), new(from.Y, to.Y, square.Row));
    }

    /// <summary>A square, and how much of the line lies on it, µm.</summary>
    public (Square Square, double Length) Current { get; private set; }

    /// <summary>For <c>foreach</c>.</summary>
    public readonly CrossedSquares GetEnumerator() => this;

    /// <summary>Steps on to the next square; false behind the last one.</summary>
    public bool MoveNext()
    {
        while (done < 1)
        {
            var (before, leaves) = (done, (X: x.Leaves, Y: y.Leaves));
            done = Math.Min(1, Math.Min(leaves.X, leaves.Y));
            Current = (new(x.Strip, y.Strip), (done - before) * length);
            if (leaves.X <= leaves.Y)
                x.Step();
            if (leaves.Y <= leaves.X)
                y.Step();
            if (done > before)
                return true;
        }
        return false;
    }

    /// <summary>Where the line is along an axis: in a column, or in a row.</summary>
    private struct Axis
    {
        private readonly double run;
        private readonly int step;
        private double edge;

        internal Axis(int from, int to, int strip)
        {
            (run, step, Strip) = (Math.Abs((double)to - from), Math.Sign((long)to - from), strip);
            edge = step < 0 ? from - ((double)strip * Square.Side) : ((strip + 1.0) * Square.Side) - from;
            Leave();
        }

        /// <summary>The column or row.</summary>
        internal int Strip { get; private set; }

        /// <summary>The share of the line at which it leaves that.</summary>
        internal double Leaves { get; private set; }

        internal void Step()
        {
            Strip += step;
            edge += Square.Side;
            Leave();
        }

        private void Leave() => Leaves = run == 0 ? double.PositiveInfinity : edge / run;
    }
}
