using Splitter.Artwork.Tapes;
using Splitter.Geometry;

namespace Splitter.Cutting.Tapes;

/// <summary>
/// Rows past a seam that do not hang on rows of the part itself: another section of the fill begins there. They are
/// repeated where they go on from rows of the part, and nowhere else: there the seam runs along the fill's own edge.
/// </summary>
/// <param name="own">Stitches that the part sews of the fill.</param>
internal sealed class RowsBeside(IEnumerable<(Point From, Point To)> own)
{
    /// <summary>
    /// Rows this far at most from those of the part go on from them, µm: an overlap is hardly wider.
    /// </summary>
    private const int Near = 3 * Units.Millimetre;

    /// <summary>Shorter ones would be more knots than rows, µm. Common practice, no source.</summary>
    private const double Shortest = 5 * Units.Millimetre;

    private readonly Lazy<CellGround> ground = new(() =>
    {
        var laid = new CellGround();
        foreach (var (from, to) in own)
            laid.Lay(from, to, 0);
        return laid;
    });

    /// <summary>Has stitches of the part itself, or goes on from them.</summary>
    internal bool IsWorthSewing(KeptThread stretch)
    {
        var stitches = stretch.Stitches;
        if (stitches.Any(s => s.Source != StitchSource.Repeated))
            return true;
        var (near, length) = (new CellGround(), 0.0);
        for (var i = 1; i < stitches.Length; i++)
            if (stitches[i].Kind == StitchKind.Fill)
            {
                near.Lay(stitches[i - 1].At, stitches[i].At, Near);
                length += stitches[i - 1].At.DistanceTo(stitches[i].At);
            }
        return length >= Shortest && near.Meets(ground.Value);
    }
}
