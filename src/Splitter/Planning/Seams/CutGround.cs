using System.Runtime.CompilerServices;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>The ground of a shape on which a seam cuts it. Along its edge a seam does not.</summary>
internal sealed class CutGround
{
    /// <summary>
    /// A seam no deeper than this inside a shape runs along its edge and does not cut it, µm: half a step of the tape.
    /// </summary>
    private const double Brushing = 50;

    /// <summary>
    /// A shape with more rings is looked at near each seam alone: a bedspread's ground with thousands of holes takes
    /// the engine, which compares each ring with all others, half a minute as a whole. Drawings of a usual size stay
    /// far below.
    /// </summary>
    private const int MostRings = 500;

    /// <summary>
    /// How far around a seam holes are looked at, µm: mitres of their offsets reach a few times that far.
    /// </summary>
    private const int Window = Units.Millimetre;

    /// <summary>Drafts of one drawing ask for the same ground again and again; kept as long as the ground is.</summary>
    private static readonly ConditionalWeakTable<Region, CutGround> Known = [];

    private readonly Region footprint;
    private readonly PathClipping? whole;
    private readonly Lazy<Func<double, double, bool>> contains;

    private CutGround(Region footprint)
    {
        this.footprint = footprint;
        whole = footprint.Rings.Count() <= MostRings ? Inside(footprint) : null;
        contains = new(() => Polygons.Containment(footprint));
    }

    internal static CutGround Of(Region footprint) => Known.GetValue(footprint, ground => new(ground));

    /// <summary>The shape goes on at a place.</summary>
    internal bool GoesOn(Point at) => contains.Value(at.X, at.Y);

    /// <summary>As far as it matters to a seam, which the box is around.</summary>
    internal PathClipping Around(Box seam) => whole ?? Inside(footprint.Near(seam.Grown(Window)));

    private static PathClipping Inside(Region ground) =>
        new(Polygons.Offset(FineOutlines.Thinned(ground, Brushing / 2), -Brushing, Join.Mitre));
}
