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
        var (held, narrow) = fill.Style.Guide is { } guide
            ? AcrossLevelRows(ground, push, guide)
            : Across(ground, new StraightFrame(fill.Style.Angle).At(0, push).From(default));

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

    /// <summary>Held back where the rows are level, and brought back from there.</summary>
    private static (Region Held, Region Narrow) AcrossLevelRows(Region ground, int push, Guide guide)
    {
        var (held, narrow) = Across(guide.Unrolled(ground), new Point(0, push));
        return (Polygons.Intersect(ground, guide.Rolled(held)), guide.Rolled(narrow));
    }

    /// <summary>
    /// What is left of ground that is held back by a move and by its opposite, and what is too narrow for both.
    /// </summary>
    private static (Region Held, Region Narrow) Across(Region ground, Point by)
    {
        var held = Polygons.Intersect(
            Polygons.Intersect(ground, Moved(ground, by.X, by.Y)),
            Moved(ground, -by.X, -by.Y)
        );
        // What is hardly wider than both allowances would be lost.
        var reached = Polygons.Union([held, Moved(held, by.X, by.Y), Moved(held, -by.X, -by.Y)]);
        return (held, Opened(Polygons.Subtract(ground, reached)));
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
}
