using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;
using Splitter.Diagnostics;
using Splitter.Geometry;

namespace Splitter.Artwork.Sewing;

/// <summary>Cuts away what later opaque shapes hide, so that thread does not pile up.</summary>
internal static class Layers
{
    /// <summary>
    /// How far the lower shape reaches under the upper one, µm: less, and a gap shows where the cloth draws in; more only
    /// thickens the edge. Common practice, no source.
    /// </summary>
    private const int Trap = 800;

    /// <summary>
    /// Hidden ground narrower than this stays sewn, µm: a small thing stands better on a closed fill, and holes break the
    /// rows up. Common practice, no source.
    /// </summary>
    private const int NarrowestHole = 4000;

    /// <summary>What is left of a shape where it is narrower than this cannot be sewn, µm.</summary>
    private const int NarrowestRest = 300;

    /// <summary>Shapes in the same order, each with what is visible of it (and the trap). A hidden one is left out with a warning.</summary>
    internal static Result<ImmutableArray<Shape>> CutAway(ImmutableArray<Shape> shapes)
    {
        var covers = new STRtree<int>();
        for (var i = 0; i < shapes.Length; i++)
            if (shapes[i] is not RunShape)
                covers.Insert(ToEnvelope(shapes[i].Footprint.Bounds), i);
        covers.Build();

        var (visible, problems) = (ImmutableArray.CreateBuilder<Shape>(shapes.Length), new List<Diagnostic>());
        for (var i = 0; i < shapes.Length; i++)
        {
            var shape = shapes[i];
            // The tree's order is of no concern: a union does not depend on it.
            var later = covers.Query(ToEnvelope(shape.Footprint.Bounds)).Where(k => k > i);
            var hidden = Hidden(Polygons.Union(later.Select(k => shapes[k].Footprint)));
            if (Without(shape, hidden) is { } rest)
                visible.Add(rest);
            else
                problems.Add(DrawingProblems.Hidden(shape.Place, shape.Id));
        }
        return Result.Of(visible.ToImmutable(), [.. problems]);
    }

    /// <summary>The ground under a cover that need not be sewn: less the trap, without narrow places.</summary>
    private static Region Hidden(Region cover) =>
        // One by one: each grows back inside itself, and the engine compares each of thousands with all others.
        new([
            .. cover
                .Polygons.SelectMany(polygon =>
                    Polygons
                        .Offset(
                            Polygons.Offset(new Region([polygon]), -(Trap + (NarrowestHole / 2))),
                            NarrowestHole / 2
                        )
                        .Polygons
                )
                .OrderBy(p => p.Outer.Points[0])
                .ThenBy(p => p.Outer.Points[1]),
        ]);

    private static Shape? Without(Shape shape, Region hidden)
    {
        if (hidden.IsEmpty || !hidden.Bounds.Meets(shape.Footprint.Bounds))
            return shape;
        var rest = Polygons.Subtract(shape.Footprint, hidden);
        if (rest.Area >= shape.Footprint.Area)
            return shape;
        var ground = new PathClipping(hidden);
        switch (shape)
        {
            case FillShape fill:
                var kept = Wide(rest);
                return kept.IsEmpty ? null : fill with { Footprint = kept };
            case SatinShape satin:
                ImmutableArray<Column> columns = [.. satin.Columns.SelectMany(c => ColumnClipping.Visible(c, ground))];
                return columns.IsEmpty || rest.IsEmpty ? null : satin with { Columns = columns, Footprint = rest };
            case RunShape run:
                ImmutableArray<Polyline> lines =
                [
                    .. run.Lines.SelectMany(l => ground.Outside(l)).Where(l => l.Length >= NarrowestRest),
                ];
                return lines.IsEmpty || rest.IsEmpty ? null : run with { Lines = lines, Footprint = rest };
            default:
                throw new InvalidOperationException($"Nothing is known to cut away of {shape.GetType().Name}.");
        }
    }

    /// <summary>Those of the areas that are somewhere wide enough to sew.</summary>
    private static Region Wide(Region rest) =>
        new([.. rest.Polygons.Where(p => !Polygons.Offset(new Region([p]), -NarrowestRest / 2).IsEmpty)]);

    private static Envelope ToEnvelope(Box box) => new(box.Left, box.Right, box.Top, box.Bottom);
}
