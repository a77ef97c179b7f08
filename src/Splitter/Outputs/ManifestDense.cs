using System.Collections.Immutable;
using System.Text.Json;
using Splitter.Artwork;
using Splitter.Planning;
using Splitter.Stitching.Density;
using static Splitter.Outputs.ManifestWriter;

namespace Splitter.Outputs;

/// <summary>Every spot with more layers or needle holes than the recipe allows; no list where there is none.</summary>
internal static class ManifestDense
{
    internal static void Write(Utf8JsonWriter json, Drawing drawing, Plan plan, ImmutableArray<DenseSpot> dense)
    {
        if (dense.IsEmpty)
            return;
        json.WriteStartArray("dense");
        foreach (var spot in dense)
        {
            json.WriteStartObject();
            json.WriteStartArray("shapes");
            foreach (var shape in spot.Shapes)
                json.WriteStringValue(drawing.Shapes[shape].Id);
            json.WriteEndArray();
            json.WriteStartArray("parts");
            foreach (var hooping in spot.Hoopings)
                json.WriteStringValue(plan.Hoopings[hooping].Letter);
            json.WriteEndArray();
            At(json, "at_mm", spot.Worst.Middle);
            json.WriteNumber("area_mm2", spot.Quarters * Quarter.Area);
            json.WriteStartObject("causes_mm2");
            foreach (var quarters in spot.Causes.Order().GroupBy(cause => cause))
                json.WriteNumber(Word(quarters.Key), quarters.Count() * Quarter.Area);
            json.WriteEndObject();
            // Upwards, so that what is more than the limit by however little says so.
            json.WriteNumber("layers", Rounded(Math.Ceiling(spot.Layers * 100) / 100, 2));
            json.WriteNumber("holes", spot.Holes);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static string Word(LayerCause cause) =>
        cause switch
        {
            LayerCause.Shapes => "shapes",
            LayerCause.Rows => "rows",
            LayerCause.Overlap => "overlap",
            LayerCause.Travel => "travel",
            LayerCause.Underlay => "underlay",
            LayerCause.Ties => "ties",
            _ => throw new InvalidOperationException($"No word is known for {cause}."),
        };
}
