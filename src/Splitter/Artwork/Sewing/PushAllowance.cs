using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Sewing;

/// <summary>
/// Holds fills back across their rows: every row pushes the one beside it a little outwards, so that a fill comes out
/// longer across its rows than it is drawn. Bare cloth never shows for it: edges right beside another shape stay where
/// they are, and over or under another shape the trap is wider.
/// </summary>
internal static class PushAllowance
{
    /// <summary>Shapes nearer than this to an edge adjoin it, µm: half a thread's width.</summary>
    private const int Beside = 200;

    /// <summary>Ground that snapping to whole micrometres leaves of nothing is as narrow as this, µm.</summary>
    private const int Hair = 10;

    /// <summary>Decimals that sine and cosine are snapped to: platforms differ in the last of their sixteen.</summary>
    private const int Decimals = 9;

    /// <summary>The shapes, and of fills that are held back the ground that is left.</summary>
    internal static ImmutableArray<Shape> Apply(ImmutableArray<Shape> shapes) =>
        [
            .. shapes.Select(
                (shape, i) =>
                    shape is FillShape { Style.Push: > 0 } fill
                        ? fill with
                        {
                            Footprint = Held(fill, shapes, i),
                        }
                        : shape
            ),
        ];

    private static Region Held(FillShape fill, ImmutableArray<Shape> shapes, int index)
    {
        var (ground, push) = (fill.Footprint, fill.Style.Push);
        var (sin, cos) = Math.SinCos(fill.Style.Angle * Math.PI / 180);
        var (x, y) = (Rounded(-push * Math.Round(sin, Decimals)), Rounded(push * Math.Round(cos, Decimals)));

        var held = Polygons.Intersect(Polygons.Intersect(ground, Moved(ground, x, y)), Moved(ground, -x, -y));
        // What is hardly wider than both allowances would be lost.
        var reached = Polygons.Union([held, Moved(held, x, y), Moved(held, -x, -y)]);
        var narrow = Opened(Polygons.Subtract(ground, reached));

        var near = fill.Footprint.Bounds.Grown(push + Beside);
        var others = Polygons.Union(
            shapes
                .Where((s, i) => i != index && s is not RunShape && s.Footprint.Bounds.Meets(near))
                .Select(s => s.Footprint)
        );
        var adjoining = Polygons.Subtract(
            Polygons.Intersect(Polygons.Subtract(ground, held), Polygons.Offset(others, push + Beside)),
            others
        );
        return Polygons.Intersect(ground, Polygons.Union([held, narrow, adjoining]));
    }

    /// <summary>Without hairs.</summary>
    private static Region Opened(Region region) =>
        Polygons.Offset(Polygons.Offset(region, -Hair, Join.Mitre), Hair, Join.Mitre);

    private static Region Moved(Region region, int x, int y) =>
        new([
            .. region.Polygons.Select(p => new Polygon(Moved(p.Outer, x, y), [.. p.Holes.Select(h => Moved(h, x, y))])),
        ]);

    private static Ring Moved(Ring ring, int x, int y) =>
        new([.. ring.Points.Select(p => new Point(p.X + x, p.Y + y))]);

    private static int Rounded(double micrometres) => (int)Math.Round(micrometres, MidpointRounding.AwayFromZero);
}
