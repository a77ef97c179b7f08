using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Benchmarks.Least;

/// <summary>
/// The least that a seam can show at a place, whichever way it runs and whoever sews the shapes that stay whole there.
/// </summary>
internal sealed class LeastPrice(Drawing drawing, Wholeness wholeness)
{
    /// <summary>Ways that a seam may run along an edge.</summary>
    private const int Ways = 16;

    private static readonly ImmutableArray<Vector> Aside =
    [
        .. Enumerable
            .Range(0, Ways)
            .Select(k => Math.SinCos(2 * Math.PI * k / Ways))
            .Select(turn => new Vector(turn.Cos, turn.Sin) * SeamPrice.EdgeDistance),
    ];

    private readonly CoverMap map = new(drawing, wholeness);

    /// <summary>For a millimetre of seam.</summary>
    internal double At(double x, double y)
    {
        var shape = map.Top(x, y);
        if (shape == CoverMap.Bare || !wholeness.IsCut(shape))
            return 0;
        foreach (var aside in Aside)
            if (map.Top(x + aside.X, y + aside.Y) != shape)
                return SeamPrice.AlongEdge;
        return SeamPrice.Inside(drawing.Shapes[shape]);
    }

    /// <summary>Something lies over a line here, so that a seam may cross it unseen.</summary>
    internal bool Hides(int line, Point at) => map.Top(at.X, at.Y) > line;
}
