using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Artwork.Inline;

/// <summary>Shapes that the recipe itself draws as well-known text (OGC 06-103r4).</summary>
internal static class InlineReader
{
    /// <summary>
    /// The sheet reaches from the origin to the farthest right and bottom edge. A finished width scales the geometry,
    /// not the width of strokes, which the recipe states as finished.
    /// </summary>
    internal static Result<Sheet> Read(ArtworkSource artwork) =>
        from drawn in Result.All(artwork.Shapes.Select(Parse))
        select Scaled(drawn, artwork.Width);

    private static Result<Drawn> Parse(InlineShape shape, int index)
    {
        var name = shape.Id ?? FormattableString.Invariant($"shape-{index + 1}");
        var (geometry, fault) = WellKnownText.Read(shape.Wkt);
        if (geometry is null)
            return Result.Fail<Drawn>(DrawingProblems.NotWkt(shape.Place, fault));
        if (PlaneGeometry.IsTangled(geometry))
            return Result.Fail<Drawn>(DrawingProblems.TooTangled(shape.Place, name));
        return PlaneGeometry.IsWithinReach(geometry)
            ? Result.Of(
                new Drawn(shape, name, geometry),
                PlaneGeometry.HasPoints(geometry) ? [DrawingProblems.PointsSkipped(shape.Place, name)] : []
            )
            : Result.Fail<Drawn>(
                DrawingProblems.TooFar(shape.Place, name, PlaneGeometry.Reach / Units.Millimetre / 1000)
            );
    }

    private static Sheet Scaled(ImmutableArray<Drawn> drawn, int? width)
    {
        var (right, bottom) = (0.0, 0.0);
        foreach (var d in drawn)
        {
            var half = d.Shape.Stroke is null ? 0 : (double)d.Shape.StrokeWidth / Units.Millimetre / 2;
            var box = d.Geometry.EnvelopeInternal;
            (right, bottom) = (Math.Max(right, box.MaxX + half), Math.Max(bottom, box.MaxY + half));
        }
        var scale = width is { } finished && right > 0 ? finished / (right * Units.Millimetre) : 1;
        return new(
            width ?? Units.FromMillimetres(right),
            Units.FromMillimetres(bottom * scale),
            [.. drawn.SelectMany(d => Elements(d, scale))]
        );
    }

    private static IEnumerable<DrawnElement> Elements(Drawn drawn, double scale)
    {
        var (shape, ids) = (drawn.Shape, ImmutableArray.Create(drawn.Name));
        Point Place(double x, double y) => Point.FromMillimetres(x * scale, y * scale);
        if (shape.Fill is { } fill && PlaneGeometry.Ground(drawn.Geometry, Place) is { IsEmpty: false } ground)
            yield return new DrawnArea
            {
                Id = drawn.Name,
                Ids = ids,
                Classes = shape.Classes,
                Place = shape.Place,
                Color = fill,
                Ground = ground,
            };
        if (shape.Stroke is { } stroke && PlaneGeometry.Paths(drawn.Geometry, Place) is { IsEmpty: false } paths)
            yield return new DrawnLine
            {
                Id = drawn.Name,
                Ids = ids,
                Classes = shape.Classes,
                Place = shape.Place,
                Color = stroke,
                Paths = paths,
                Width = shape.StrokeWidth,
                Cap = Cap.Round,
                Join = Join.Round,
            };
    }

    private sealed record Drawn(InlineShape Shape, string Name, NetTopologySuite.Geometries.Geometry Geometry);
}
