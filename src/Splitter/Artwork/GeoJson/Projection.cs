using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;

namespace Splitter.Artwork.GeoJson;

/// <summary>
/// Degrees to the drawing: equirectangular with the standard parallel in the middle of the artwork (Snyder 1987, Map
/// Projections: A Working Manual, USGS Professional Paper 1395, chapter 12; from memory). True to scale there along
/// both axes, which suits a coast that is sewn.
/// </summary>
internal sealed class Projection
{
    /// <summary>Beyond it an equirectangular picture is stretched out of all likeness, degrees.</summary>
    private const double HighestLatitude = 85;

    private readonly double west;
    private readonly double north;
    private readonly double xScale;
    private readonly double yScale;
    private readonly int margin;

    private Projection(double west, double north, double xScale, double yScale, int margin, int height)
    {
        (this.west, this.north, this.xScale, this.yScale, this.margin) = (west, north, xScale, yScale, margin);
        Height = height;
    }

    /// <summary>Finished height, µm.</summary>
    internal int Height { get; }

    /// <summary>Lays features on a finished width in µm, half their widest stroke inside the edge.</summary>
    internal static Result<Projection> Over(ImmutableArray<Feature> features, int width, Place place)
    {
        if (features.FirstOrDefault(f => !IsOnEarth(f)) is { } lost)
            return Result.Fail<Projection>(DrawingProblems.NotOnEarth(lost.Place, lost.Name));
        if (features.IsEmpty)
            return Result.Fail<Projection>(DrawingProblems.NothingToSew(place));
        var box = new NetTopologySuite.Geometries.Envelope();
        foreach (var feature in features)
            box.ExpandToInclude(feature.Geometry.EnvelopeInternal);
        var inset = features.Max(f => f.Stroke is null ? 0 : f.StrokeWidth) / 2;
        var parallel = Math.Cos((box.MinY + box.MaxY) / 2 * Math.PI / 180);
        // A line that runs straight north has no width; its height is then what the finished width measures.
        var up = (width - (2.0 * inset)) / (box.Width > 0 ? box.Width * parallel : box.Height);
        if (!double.IsFinite(up) || up <= 0)
            return Result.Fail<Projection>(DrawingProblems.NothingToSew(place));
        var height = Units.Round(box.Height * up) + (2 * inset);
        return height > PlaneGeometry.Reach
            ? Result.Fail<Projection>(
                DrawingProblems.TooFar(place, features[0].Name, PlaneGeometry.Reach / Units.Millimetre / 1000)
            )
            : Result.Of(new Projection(box.MinX, box.MaxY, up * parallel, up, inset, height));
    }

    /// <summary>A place on the drawing.</summary>
    internal Point Place(double longitude, double latitude) =>
        new(margin + Units.Round((longitude - west) * xScale), margin + Units.Round((north - latitude) * yScale));

    private static bool IsOnEarth(Feature feature) =>
        feature.Geometry.Coordinates.All(c => Math.Abs(c.X) <= 180 && Math.Abs(c.Y) <= HighestLatitude);
}
