using Splitter.Geometry;

namespace Splitter.Correcting;

/// <summary>
/// How much less surely a part lies that follows a stretch: least squares that look for more in the same figures leave
/// more of their errors in what they find, and carry it as far as the part reaches.
/// </summary>
/// <param name="moves">Where a unit of each column moves a place: shift, turn, and what stretches.</param>
/// <param name="rigid">The fit of the first columns alone, shift and turn.</param>
/// <param name="followed">The fit of all.</param>
/// <param name="spread">Covariance of the figures, µm².</param>
internal sealed class FollowedSpread(
    Func<Vector, Vector>[] moves,
    LinearFit rigid,
    LinearFit followed,
    double[,] spread
)
{
    private readonly double[][] ofRigid = rigid.Shares();
    private readonly double[][] ofFollowed = followed.Shares();

    /// <summary>Covariance of where a place comes to lie, µm², beyond that of shift and turn.</summary>
    internal (double XX, double XY, double YY) At(Point at)
    {
        var place = new Vector(at.X, at.Y);
        var (all, plain) = (Of(ofFollowed, place), Of(ofRigid, place));
        var (xx, yy) = (Math.Max(0, all.XX - plain.XX), Math.Max(0, all.YY - plain.YY));
        var most = Math.Sqrt(xx * yy);
        return (xx, Math.Clamp(all.XY - plain.XY, -most, most), yy);
    }

    /// <summary>With of each figure the share that goes into each column.</summary>
    private (double XX, double XY, double YY) Of(double[][] shares, Vector place)
    {
        var count = shares.Length;
        var moved = new Vector[count];
        for (var i = 0; i < count; i++)
        for (var k = 0; k < shares[i].Length; k++)
            moved[i] += moves[k](place) * shares[i][k];
        var (xx, xy, yy) = (0.0, 0.0, 0.0);
        for (var i = 0; i < count; i++)
        for (var j = 0; j < count; j++)
        {
            xx += spread[i, j] * moved[i].X * moved[j].X;
            xy += spread[i, j] * moved[i].X * moved[j].Y;
            yy += spread[i, j] * moved[i].Y * moved[j].Y;
        }
        return (xx, xy, yy);
    }
}
