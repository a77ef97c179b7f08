using System.Runtime.Intrinsics;

namespace Splitter.Artwork.Columns;

/// <summary>
/// The straight ways on from a rung that pass all those after it closely, by how fast each of the four coordinates of
/// its ends may change: between two bounds each, which one rung after the other narrows. Along a straight column they
/// tell what else only a look at all rungs that were passed would tell.
/// </summary>
/// <param name="rungs">In order, each with how far along the column it stands.</param>
/// <param name="from">The rung that ways start from.</param>
/// <param name="tolerance">How far ends may lie from their rung's, µm.</param>
internal sealed class StraightWays(List<(double At, Rung Rung)> rungs, int from, double tolerance)
{
    /// <summary>
    /// Within this of each coordinate ends are within the tolerance of their place, even once both coordinates are
    /// rounded to whole micrometres; 0.1 µm is more than numbers are inexact by.
    /// </summary>
    private readonly Vector256<double> aside = Vector256.Create((tolerance / Math.Sqrt(2)) - 0.5 - 0.1);

    private Vector256<double> least = Vector256.Create(double.NegativeInfinity);
    private Vector256<double> most = Vector256.Create(double.PositiveInfinity);

    /// <summary>Ways are to pass a rung closely, too.</summary>
    internal void Pass(int rung)
    {
        if (rung == from)
            return;
        var way = rungs[rung].At - rungs[from].At;
        if (!(way > 0))
        {
            // Beside the first one a way has no direction yet: all of them have to be looked at.
            least = Vector256.Create(double.PositiveInfinity);
            return;
        }
        var moved = Ends(rung) - Ends(from);
        (least, most) = (Vector256.Max(least, (moved - aside) / way), Vector256.Min(most, (moved + aside) / way));
    }

    /// <summary>The way to a rung passes all of them closely; it may do so even where this does not say it.</summary>
    internal bool LeadTo(int rung)
    {
        var way = rungs[rung].At - rungs[from].At;
        // Beside the first one still, no speed leads there.
        if (!(way > 0))
            return false;
        var speed = (Ends(rung) - Ends(from)) / way;
        return Vector256.LessThanOrEqualAll(least, speed) && Vector256.LessThanOrEqualAll(speed, most);
    }

    private Vector256<double> Ends(int rung)
    {
        var (left, right) = (rungs[rung].Rung.Left, rungs[rung].Rung.Right);
        return Vector256.Create(left.X, left.Y, right.X, (double)right.Y);
    }
}
