using System.Collections.Immutable;
using System.Text.Json;
using NetTopologySuite.IO.Converters;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Nts = NetTopologySuite.Geometries;

namespace Splitter.Artwork.GeoJson;

/// <summary>
/// GeoJSON (RFC 7946): a feature collection, a feature or a bare geometry, in degrees of WGS 84. Paint stands in the
/// properties <c>fill</c>, <c>stroke</c> (six hexadecimal digits), <c>stroke-width</c> (finished millimetres) and
/// <c>class</c>; what has no paint is black, as in SVG.
/// </summary>
internal static class GeoJsonReader
{
    /// <summary>What has no paint is painted as SVG paints it.</summary>
    private const string Black = "#000000";

    private static readonly JsonSerializerOptions Geometries = new() { Converters = { new GeoJsonConverterFactory() } };

    internal static Result<Sheet> Read(SourceFile source, int? width, Place sizePlace)
    {
        if (width is not { } finished)
            return Result.Fail<Sheet>(DrawingProblems.NoWidth(sizePlace));
        try
        {
            using var document = JsonDocument.Parse(source.Bytes);
            if (JsonLetters.Broken(source) is { } broken)
                return Result.Fail<Sheet>(
                    DrawingProblems.NotGeoJson(
                        broken,
                        "this text holds what is no letter in UTF-8; save the file as UTF-8"
                    )
                );
            return from features in Features(source, document.RootElement)
                from projection in Projection.Over(features, finished, Place.Whole(source.Path))
                select new Sheet(finished, projection.Height, [.. features.SelectMany(f => Elements(f, projection))]);
        }
        catch (JsonException e)
        {
            var place = new Place(source.Path, (int)(e.LineNumber ?? 0) + 1, (int)(e.BytePositionInLine ?? 0) + 1);
            return Result.Fail<Sheet>(DrawingProblems.NotGeoJson(place, "it is not well-formed JSON here"));
        }
    }

    private static Result<ImmutableArray<Feature>> Features(SourceFile source, JsonElement root)
    {
        if (Type(root) != "FeatureCollection")
            return from only in ReadFeature(root, 0, new(source.Path, 1, 1)) select ImmutableArray.Create(only);
        if (!root.TryGetProperty("features", out var list) || list.ValueKind != JsonValueKind.Array)
            return Result.Fail<ImmutableArray<Feature>>(
                DrawingProblems.NotGeoJson(new(source.Path, 1, 1), "'features' must be a list")
            );
        var places = FeaturePlaces.In(source);
        return Result.All(list.EnumerateArray().Select((feature, i) => ReadFeature(feature, i, places[i])));
    }

    private static Result<Feature> ReadFeature(JsonElement element, int index, Place place)
    {
        var isFeature = Type(element) == "Feature";
        var properties =
            isFeature && element.TryGetProperty("properties", out var p) && p.ValueKind == JsonValueKind.Object
                ? p
                : default;
        var id = isFeature && element.TryGetProperty("id", out var given) ? given.ToString() : null;
        var name = string.IsNullOrEmpty(id) ? FormattableString.Invariant($"feature-{index + 1}") : id;
        if (isFeature && (!element.TryGetProperty("geometry", out var g) || g.ValueKind == JsonValueKind.Null))
            return Fail($"feature '{name}' has no geometry");
        Nts.Geometry? geometry;
        try
        {
            geometry = (isFeature ? element.GetProperty("geometry") : element).Deserialize<Nts.Geometry>(Geometries);
        }
        catch (Exception e) when (e is JsonException or ArgumentException or InvalidOperationException)
        {
            return Fail($"the geometry of feature '{name}' is none of section 3.1");
        }
        if (geometry is null || geometry.IsEmpty)
            return Fail($"feature '{name}' has an empty geometry");
        if (PlaneGeometry.IsTangled(geometry))
            return Result.Fail<Feature>(DrawingProblems.TooTangled(place, name));

        var problems = new List<Diagnostic>();
        if (PlaneGeometry.HasPoints(geometry))
            problems.Add(DrawingProblems.PointsSkipped(place, name));
        return Result.From(
            new Feature(
                name,
                Text(properties, "class")?.Split(' ', StringSplitOptions.RemoveEmptyEntries).ToImmutableArray() ?? [],
                place,
                geometry,
                Colour("fill"),
                Colour("stroke"),
                Width()
            ),
            problems
        );

        Result<Feature> Fail(string what) => Result.Fail<Feature>(DrawingProblems.NotGeoJson(place, what));

        string? Colour(string key)
        {
            if (Text(properties, key) is not { } text)
                return null;
            if (text is ['#', .. { Length: 6 } digits] && digits.All(char.IsAsciiHexDigit))
                return text.ToLowerInvariant();
            problems.Add(DrawingProblems.NotAColour(place, name, key));
            return null;
        }

        int Width()
        {
            if (
                properties.ValueKind != JsonValueKind.Object
                || !properties.TryGetProperty("stroke-width", out var value)
            )
                return Sewing.SewDefaults.ThreadWidth;
            if (value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out var mm) && mm is >= 0 and <= 100)
                return Units.FromMillimetres(mm);
            problems.Add(DrawingProblems.NotAWidth(place, name));
            return 0;
        }
    }

    private static IEnumerable<DrawnElement> Elements(Feature feature, Projection projection)
    {
        var (fill, stroke) = (feature.Fill, feature.Stroke);
        var ground = PlaneGeometry.Ground(feature.Geometry, projection.Place);
        if (fill is null && stroke is null)
            (fill, stroke) = ground.IsEmpty ? (fill, Black) : (Black, stroke);
        if (fill is not null && !ground.IsEmpty)
            yield return new DrawnArea
            {
                Id = feature.Name,
                Ids = [feature.Name],
                Classes = feature.Classes,
                Place = feature.Place,
                Color = fill,
                Ground = ground,
            };
        if (stroke is not null && PlaneGeometry.Paths(feature.Geometry, projection.Place) is { IsEmpty: false } paths)
            yield return new DrawnLine
            {
                Id = feature.Name,
                Ids = [feature.Name],
                Classes = feature.Classes,
                Place = feature.Place,
                Color = stroke,
                Paths = paths,
                Width = feature.StrokeWidth,
                Cap = Cap.Round,
                Join = Join.Round,
            };
    }

    private static string? Type(JsonElement element) => Text(element, "type");

    private static string? Text(JsonElement element, string key) =>
        element.ValueKind == JsonValueKind.Object
        && element.TryGetProperty(key, out var value)
        && value.ValueKind == JsonValueKind.String
            ? value.GetString()
            : null;
}

/// <summary>A feature with its paint.</summary>
/// <param name="Geometry">Degrees of longitude and latitude.</param>
/// <param name="StrokeWidth">Micrometres.</param>
internal sealed record Feature(
    string Name,
    ImmutableArray<string> Classes,
    Place Place,
    Nts.Geometry Geometry,
    string? Fill,
    string? Stroke,
    int StrokeWidth
);
