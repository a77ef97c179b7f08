using Splitter.Geometry;

namespace Splitter.Stitching.Fills;

/// <summary>
/// Stitches along curved rows: each is the chord of a bow, and rows lie beside each other only where chords stay near
/// their bows. What is decided here depends on a place of the lattice alone, so that parts decide alike.
/// </summary>
internal sealed class Bows(Frame frame, double longest)
{
    /// <summary>
    /// How far a stitch may lie from its row, µm: more than this opens gaps beside the 0.4 mm of a thread.
    /// </summary>
    private const double Straying = 50;

    /// <summary>
    /// By how much of either bound it is exceeded before a stitch is divided: those of the longest rows are set to meet
    /// it just about, and halves among them would show.
    /// </summary>
    private const double Margin = 1.05;

    /// <summary>Stitches of less than this are not divided, µm: their halves are sewable on the tape's grid.</summary>
    private const double Divisible = 2 * (StitchRules.Shortest + StitchRules.GridSlack);

    /// <summary>
    /// Of the recipe's stitch length what the distance of penetrations on the guide is at least: where rows are
    /// stretched more than this allows, their stitches are divided instead, lest those inside the bend become too
    /// short.
    /// </summary>
    private const double LeastStep = 0.5;

    /// <summary>Places of a way lie no further apart along a row than this, µm.</summary>
    private const double Leg = Units.Millimetre;

    /// <summary>
    /// How far apart penetrations are on the guide, µm, so that those of the ground's longest rows are in most cases no
    /// further apart than a stitch, and none need be divided. Rows bend and stretch most where the outline ends a rib.
    /// </summary>
    internal double StepOn(Region ground)
    {
        var step = longest;
        foreach (var (u, v) in ground.Rings.SelectMany(frame.Of))
        {
            var stretch = frame.Stretch(u, v);
            var bow = Math.Sqrt(8 * Straying / Math.Max(Math.Abs(frame.Bend(u, v)), double.Epsilon));
            step = Math.Min(step, Math.Min(longest, bow) / stretch);
        }
        return Math.Max(step, longest * LeastStep);
    }

    /// <summary>Where a stitch of a row must be divided: halves, and halves of them, in ascending order.</summary>
    internal IEnumerable<double> Between(double v, double from, double to)
    {
        if (!IsDivided(v, from, to))
            yield break;
        var middle = (from + to) / 2;
        foreach (var u in Between(v, from, middle))
            yield return u;
        yield return middle;
        foreach (var u in Between(v, middle, to))
            yield return u;
    }

    /// <summary>Places on the straight way from a place, without it, to another one.</summary>
    internal static IEnumerable<Place> Divided(Place from, Place to)
    {
        var legs = Math.Max(1, (int)Math.Ceiling(Math.Abs(to.U - from.U) / Leg));
        return Enumerable
            .Range(1, legs)
            .Select(i => new Place(from.T + ((to.T - from.T) * i / legs), from.U + ((to.U - from.U) * i / legs)));
    }

    private bool IsDivided(double v, double from, double to)
    {
        var (start, end) = (frame.At(from, v), frame.At(to, v));
        var chord = end - start;
        if (chord.Length < Divisible)
            return false;
        if (chord.Length > longest * Margin)
            return true;
        foreach (var share in (ReadOnlySpan<double>)[0.25, 0.5, 0.75])
            if (
                Math.Abs(Vector.Cross(chord.Unit, frame.At(from + (share * (to - from)), v) - start))
                > Straying * Margin
            )
                return true;
        return false;
    }
}
