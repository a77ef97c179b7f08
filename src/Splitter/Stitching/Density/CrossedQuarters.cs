using System.Runtime.CompilerServices;
using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>
/// The quarters that a line crosses, one after the other, and how much of it lies on each. All thread of a work goes
/// through it several times, so it is a value that steps on, without an object for each stitch.
/// </summary>
internal struct CrossedQuarters
{
    private readonly double length;
    private Axis x;
    private Axis y;
    private double done;

    internal CrossedQuarters(Point from, Point to)
        : this(from, to, from.DistanceTo(to)) => Begin(from);

    private CrossedQuarters(Point from, Point to, double length) =>
        (this.length, x, y) = (length, new(from.X, to.X), new(from.Y, to.Y));

    /// <summary>A line that <see cref="Begin"/> still has to lay somewhere.</summary>
    internal static CrossedQuarters Along(Point from, Point to, double length) => new(from, to, length);

    /// <summary>A quarter, and how much of the line lies on it, µm.</summary>
    public (Quarter Quarter, double Length) Current { get; private set; }

    /// <summary>For <c>foreach</c>.</summary>
    public readonly CrossedQuarters GetEnumerator() => this;

    /// <summary>Moves the line, as long as it is and in its direction, to another place, and begins there.</summary>
    internal void Begin(Point at)
    {
        x.Begin(at.X);
        y.Begin(at.Y);
        done = 0;
    }

    /// <summary>Steps on to the next quarter; false behind the last one.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool MoveNext()
    {
        while (done < 1)
        {
            var (before, byX, byY) = (done, x.Leaves, y.Leaves);
            done = Math.Min(1, Math.Min(byX, byY));
            Current = (new(x.Strip, y.Strip), (done - before) * length);
            if (byX <= byY)
                x.Step();
            if (byY <= byX)
                y.Step();
            if (done > before)
                return true;
        }
        return false;
    }

    /// <summary>How the line goes through columns, or through rows.</summary>
    private struct Axis(int from, int to)
    {
        private readonly double run = Math.Abs((double)to - from);
        private readonly int step = Math.Sign((long)to - from);
        private double edge;

        /// <summary>The column or row that it is in.</summary>
        internal int Strip { get; private set; }

        /// <summary>The share of the line at which it leaves that.</summary>
        internal double Leaves { get; private set; }

        internal void Begin(int at)
        {
            Strip = Quarter.Down(at);
            edge = Math.Abs(((Strip + (step < 0 ? 0.0 : 1.0)) * Quarter.Side) - at);
            Leave();
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        internal void Step()
        {
            Strip += step;
            edge += Quarter.Side;
            Leave();
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private void Leave() => Leaves = run == 0 ? double.PositiveInfinity : edge / run;
    }
}
