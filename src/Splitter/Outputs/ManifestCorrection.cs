using System.Text.Json;
using Splitter.Correcting;
using Splitter.Geometry;
using static Splitter.Outputs.ManifestWriter;

namespace Splitter.Outputs;

/// <summary>
/// What a corrected part was made of: the part as planned, the move, and what the move does to joins.
/// </summary>
internal static class ManifestCorrection
{
    internal static void Write(Utf8JsonWriter json, Correction correction, string originalSum)
    {
        var move = correction.Move;
        json.WriteStartObject("correction");
        json.WriteStartObject("original");
        json.WriteString("part", correction.Part.Letter);
        json.WriteString("sha256", originalSum);
        json.WriteEndObject();
        json.WriteStartArray("offsets");
        foreach (var offset in correction.Offsets)
        {
            json.WriteStartObject();
            json.WriteString("at", offset.At);
            json.WriteNumber("right_mm", Millimetres(offset.Right));
            json.WriteNumber("up_mm", Millimetres(offset.Up));
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteString("verdict", Words.Of(move.Verdict));
        json.WriteStartObject("move");
        json.WriteNumber("right_mm", Millimetres(move.Right));
        json.WriteNumber("up_mm", Millimetres(move.Up));
        json.WriteNumber("clockwise_deg", Rounded(move.Degrees, 3));
        json.WriteNumber("longer_along_warp_percent", Rounded(move.Warp * 100, 3));
        json.WriteNumber("longer_along_weft_percent", Rounded(move.Weft * 100, 3));
        json.WriteEndObject();
        json.WriteNumber("residual_mm", Rounded(move.Residual / Units.Millimetre, 3));
        json.WriteStartArray("crosses");
        foreach (var (cross, offset) in correction.Part.Hooping.Alignments.Zip(correction.Checked))
        {
            json.WriteStartObject();
            json.WriteString("at", offset.At);
            json.WriteString("meets", cross.On);
            At(json, "at_mm", cross.At);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartArray("joins_before");
        foreach (var (before, _) in correction.Joins)
        {
            json.WriteStartObject();
            json.WriteStartArray("between");
            json.WriteStringValue(correction.Plan.Hoopings[before.Earlier].Letter);
            json.WriteStringValue(correction.Plan.Hoopings[before.Later].Letter);
            json.WriteEndArray();
            json.WriteNumber("within_95_mm", Millimetres(before.Within95));
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }
}
