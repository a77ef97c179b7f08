using System.Text.Json;
using Splitter.Geometry;
using Splitter.Planning;
using static Splitter.Outputs.ManifestWriter;

namespace Splitter.Outputs;

/// <summary>What is to be expected of every join, as the manifest lists it.</summary>
internal static class ManifestJoins
{
    internal static void Write(Utf8JsonWriter json, Plan plan)
    {
        json.WriteStartArray("joins");
        foreach (var join in plan.Joins)
        {
            json.WriteStartObject();
            json.WriteStartArray("between");
            json.WriteStringValue(plan.Hoopings[join.Earlier].Letter);
            json.WriteStringValue(plan.Hoopings[join.Later].Letter);
            json.WriteEndArray();
            json.WriteStartArray("corners");
            foreach (var corner in plan.Corners.Where(c => new[] { join.Earlier, join.Later }.All(Users(c).Contains)))
                json.WriteStringValue(corner.Id);
            json.WriteEndArray();
            At(json, "worst_at_mm", join.WorstAt);
            json.WriteNumber("predicted_error_mm", Rounded(join.PredictedError / Units.Millimetre, 3));
            json.WriteStartObject("budget_mm");
            json.WriteNumber("setting", Rounded(join.Budget.Setting / Units.Millimetre, 3));
            json.WriteNumber("rounding", Rounded(join.Budget.Rounding / Units.Millimetre, 3));
            json.WriteNumber("warp", Rounded(join.Budget.Warp / Units.Millimetre, 3));
            json.WriteNumber("weft", Rounded(join.Budget.Weft / Units.Millimetre, 3));
            json.WriteNumber("bias", Rounded(join.Budget.Bias / Units.Millimetre, 3));
            json.WriteEndObject();
            json.WriteNumber("within_95_mm", Millimetres(join.Within95));
            json.WriteNumber("along_seam_mm", Millimetres(join.AlongSeam));
            AtJunctions(json, plan, join);
            json.WriteNumber("overlap_mm", Millimetres(join.Overlap));
            json.WriteNumber("narrowest_overlap_mm", Millimetres(join.Narrowest));
            json.WriteNumber("covers_mm", Millimetres(join.Covers));
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    /// <summary>Where others meet two parts; null where none do.</summary>
    private static void AtJunctions(Utf8JsonWriter json, Plan plan, PartJoin join)
    {
        if (join.Junction is not { } junction)
        {
            json.WriteNull("at_junctions_mm");
            json.WriteNull("junction");
            return;
        }
        json.WriteNumber("at_junctions_mm", Millimetres(junction.Misfit));
        json.WriteStartObject("junction");
        json.WriteStartArray("parts");
        foreach (var part in junction.Parts)
            json.WriteStringValue(plan.Hoopings[part].Letter);
        json.WriteEndArray();
        At(json, "at_mm", junction.At);
        json.WriteEndObject();
    }
}
