using System.Numerics;
using System.Runtime.Intrinsics;
using Splitter.Geometry;

namespace Splitter.Planning.Fit;

/// <summary>
/// Shift and turn of a hooping about the origin: for each error by how much one standard deviation of it moves.
/// </summary>
/// <param name="place">Which hooping it is, in sewing order: errors of later ones do not move it.</param>
/// <param name="stride">How many errors each hooping brings.</param>
internal sealed class Pose(int place, int stride)
{
    internal readonly double[] X = new double[stride * (place + 1)];
    internal readonly double[] Y = new double[stride * (place + 1)];
    internal readonly double[] Turn = new double[stride * (place + 1)];
    internal Point[] Corners = [];

    /// <summary>
    /// Hoopings whose errors move it, a bit each: itself and those that its corners come from, and theirs. All other
    /// columns are nothing: of hundreds of hoopings most.
    /// </summary>
    private readonly ulong[] movedBy = new ulong[(place / 64) + 1];

    /// <summary>Begins anew, moved by its own errors alone.</summary>
    internal void Clear()
    {
        Array.Clear(X);
        Array.Clear(Y);
        Array.Clear(Turn);
        Array.Clear(movedBy);
        movedBy[place / 64] = 1UL << (place % 64);
    }

    /// <summary>Whatever moves an earlier hooping moves this one, too.</summary>
    internal void Follow(Pose earlier)
    {
        for (var i = 0; i < earlier.movedBy.Length; i++)
            movedBy[i] |= earlier.movedBy[i];
    }

    /// <summary>Shifts and turns about a centroid become those about the origin.</summary>
    internal void FromCentroid(double x, double y)
    {
        for (var c = 0; c < X.Length; c++)
        {
            X[c] += Turn[c] * y;
            Y[c] -= Turn[c] * x;
        }
    }

    /// <summary>The first column of each hooping whose errors move this one or an earlier one, ascending.</summary>
    /// <param name="firsts">Scratch: room for all hoopings up to this one.</param>
    internal ReadOnlySpan<int> Moving(Pose earlier, Span<int> firsts)
    {
        var count = 0;
        for (var i = 0; i < movedBy.Length; i++)
        for (var bits = movedBy[i] | (i < earlier.movedBy.Length ? earlier.movedBy[i] : 0); bits != 0; bits &= bits - 1)
            firsts[count++] = stride * ((64 * i) + BitOperations.TrailingZeroCount(bits));
        return firsts[..count];
    }

    /// <summary>
    /// Mean squared misfit of two at several places, but for what their own cloth gives: each place is summed by
    /// itself, in the order of errors.
    /// </summary>
    /// <param name="stride">How many errors each hooping brings.</param>
    /// <param name="moving">As <see cref="Moving"/> says of them.</param>
    internal static Vector256<double> SumOfSquares(
        Pose late,
        Pose early,
        int stride,
        ReadOnlySpan<int> moving,
        Vector256<double> x,
        Vector256<double> y
    )
    {
        var sum = Vector256<double>.Zero;
        foreach (var first in moving)
            for (var c = first; c < first + stride; c++)
            {
                var (moveX, moveY, moveTurn) =
                    first < early.X.Length
                        ? (late.X[c] - early.X[c], late.Y[c] - early.Y[c], late.Turn[c] - early.Turn[c])
                        : (late.X[c], late.Y[c], late.Turn[c]);
                var turn = Vector256.Create(moveTurn);
                var dx = Vector256.Create(moveX) - (turn * y);
                var dy = Vector256.Create(moveY) + (turn * x);
                sum += (dx * dx) + (dy * dy);
            }
        return sum;
    }
}
