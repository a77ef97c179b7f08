using System.Runtime.Intrinsics;
using Splitter.Geometry;

namespace Splitter.Planning.Fit;

/// <summary>
/// Shift and turn of a hooping about the origin: for each error by how much one standard deviation of it moves.
/// </summary>
internal sealed class Pose(int columns)
{
    internal readonly double[] X = new double[columns];
    internal readonly double[] Y = new double[columns];
    internal readonly double[] Turn = new double[columns];
    internal Point[] Corners = [];

    /// <summary>
    /// Mean squared misfit of two at several places, but for what their own cloth gives: each place is summed by
    /// itself, in the order of errors.
    /// </summary>
    internal static Vector256<double> SumOfSquares(Pose late, Pose early, Vector256<double> x, Vector256<double> y)
    {
        var sum = Vector256<double>.Zero;
        for (var c = 0; c < early.X.Length; c++)
        {
            var turn = Vector256.Create(late.Turn[c] - early.Turn[c]);
            var dx = Vector256.Create(late.X[c] - early.X[c]) - (turn * y);
            var dy = Vector256.Create(late.Y[c] - early.Y[c]) + (turn * x);
            sum += (dx * dx) + (dy * dy);
        }
        for (var c = early.X.Length; c < late.X.Length; c++)
        {
            var turn = Vector256.Create(late.Turn[c]);
            var dx = Vector256.Create(late.X[c]) - (turn * y);
            var dy = Vector256.Create(late.Y[c]) + (turn * x);
            sum += (dx * dx) + (dy * dy);
        }
        return sum;
    }
}
