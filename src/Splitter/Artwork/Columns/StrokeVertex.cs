using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>How a column goes round a vertex of its centre line.</summary>
internal enum Bend
{
    /// <summary>One rung along the bisector.</summary>
    Gentle,

    /// <summary>Rungs fan about the inner corner, where the inner edges of both legs meet.</summary>
    Inner,

    /// <summary>
    /// Rungs stay square to their legs and end on the bisector between them, from the inner corner over the vertex to a
    /// mitre's tip: the legs meet like the sides of a frame. Of a round join the outer half fans about the vertex.
    /// </summary>
    Mitre,

    /// <summary>
    /// Each leg ends square and rungs between fan about the vertex itself; the legs overlap inside. For turns so sharp,
    /// or legs so short, that the inner edges of the legs do not meet on them.
    /// </summary>
    Pivot,
}

/// <summary>A vertex of a centre line.</summary>
/// <param name="At">Where it is.</param>
/// <param name="Before">Unit direction of the leg that ends here; the other leg's at a start.</param>
/// <param name="After">Unit direction of the leg that begins here; the other leg's at an end.</param>
internal sealed record StrokeVertex(Point At, Vector Before, Vector After)
{
    /// <summary>
    /// Up to here a curve that was flattened finely enough looks smooth under thread: cosine of 25 degrees.
    /// </summary>
    private const double GentleCosine = 0.9063;

    /// <summary>
    /// Up to here slanted rungs along both legs do not show: cosine of 12 degrees. Larger turns between long legs get
    /// rungs of their own, so that the legs keep theirs square.
    /// </summary>
    private const double UnseenCosine = 0.9781;

    /// <summary>
    /// Beyond here a fan about the inner corner would have rungs twice as long as the column is wide and more thread in
    /// one hole than cloth takes: cosine of 100 degrees.
    /// </summary>
    private const double SharpCosine = -0.1736;

    /// <summary>
    /// From here on a pointed corner is mitred, so that its rungs do not fan about the inner corner: cosine of 60
    /// degrees.
    /// </summary>
    private const double MitredCosine = 0.5;

    private double Cosine => Vector.Dot(Before, After);

    internal bool IsGentle => Cosine >= GentleCosine;

    internal bool IsUnseen => Cosine >= UnseenCosine;

    internal bool IsSharp => Cosine < SharpCosine;

    internal bool IsMitred => Cosine <= MitredCosine;

    internal bool TurnsRight => Vector.Cross(Before, After) > 0;

    /// <summary>
    /// Tangent of half the turn, positive to the right: how far a bisector leans along a leg, per half width.
    /// </summary>
    internal double Lean => Vector.Cross(Before, After) / (1 + Cosine);

    /// <summary>From the centre line to the left edge at the bisector, for a half width of 1.</summary>
    internal Vector Bisector => (Before.Left + After.Left) * (1 / (1 + Cosine));

    /// <summary>
    /// Mitre length over stroke width, as SVG's <c>stroke-miterlimit</c> bounds it: 1 / sin of half the angle.
    /// </summary>
    internal double MitreRatio => Math.Sqrt(2 / Math.Max(1 + Cosine, 1e-12));

    /// <summary>The turn, radians, not negative.</summary>
    internal double Turn => Math.Acos(Math.Clamp(Cosine, -1, 1));

    /// <summary>Chosen once the lengths of the legs are known.</summary>
    internal Bend Bend { get; set; }
}
