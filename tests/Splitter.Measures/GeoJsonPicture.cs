using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Splitter.Measures;

/// <summary>
/// A GeoJSON file (RFC 7946) as an SVG, so that an independent renderer can draw it: equirectangular, true to scale on the
/// middle parallel, half the widest stroke inside the edge.
/// </summary>
public static class GeoJsonPicture
{
    /// <summary>Draws polygons at a finished width, mm.</summary>
    public static string Of(string text, double width)
    {
        using var json = JsonDocument.Parse(text);
        var features = json.RootElement.GetProperty("features").EnumerateArray().ToList();
        var all = features.SelectMany(f => Rings(f).SelectMany(r => r)).ToList();
        var (west, east) = (all.Min(p => p.Longitude), all.Max(p => p.Longitude));
        var (south, north) = (all.Min(p => p.Latitude), all.Max(p => p.Latitude));
        var inset = features.Max(StrokeWidth) / 2;
        var parallel = Math.Cos((south + north) / 2 * Math.PI / 180);
        var scale = (width - (2 * inset)) / ((east - west) * parallel);
        var height = ((north - south) * scale) + (2 * inset);
        var svg = new StringBuilder();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<svg xmlns='http://www.w3.org/2000/svg' width='{width}mm' height='{height}mm' viewBox='0 0 {width} {height}' stroke-linejoin='round'>"
        );
        foreach (var feature in features)
        {
            svg.Append(
                CultureInfo.InvariantCulture,
                $"<path fill-rule='evenodd' fill='{Property(feature, "fill")}' stroke='{Property(feature, "stroke")}' stroke-width='{StrokeWidth(feature)}' d='"
            );
            foreach (var ring in Rings(feature))
            {
                svg.Append('M');
                foreach (var (longitude, latitude) in ring)
                    svg.Append(
                        CultureInfo.InvariantCulture,
                        $" {inset + ((longitude - west) * parallel * scale):0.###} {inset + ((north - latitude) * scale):0.###}"
                    );
                svg.Append('Z');
            }
            svg.Append("'/>");
        }
        return svg.Append("</svg>").ToString();
    }

    private static string Property(JsonElement feature, string name) =>
        feature.GetProperty("properties").GetProperty(name).GetString()!;

    private static double StrokeWidth(JsonElement feature) =>
        feature.GetProperty("properties").GetProperty("stroke-width").GetDouble();

    private static IEnumerable<IEnumerable<(double Longitude, double Latitude)>> Rings(JsonElement feature) =>
        feature
            .GetProperty("geometry")
            .GetProperty("coordinates")
            .EnumerateArray()
            .Select(ring => ring.EnumerateArray().Select(p => (p[0].GetDouble(), p[1].GetDouble())));
}
