using System.Text.Json;
using Splitter.Cutting.Tapes;
using Splitter.Geometry;
using Splitter.Outputs.Tapes;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Recipes;
using static Splitter.Outputs.ManifestWriter;

namespace Splitter.Outputs;

/// <summary>One part in the manifest: its field, its counts, what it takes, its steps and corners.</summary>
internal static class ManifestPart
{
    internal static void Write(Utf8JsonWriter json, Job job, Plan plan, ListedPart listed)
    {
        var (part, figures, recipe) = (listed.Part, listed.Figures, job.Recipe);
        json.WriteStartObject();
        json.WriteString("letter", part.Letter);
        json.WriteStartArray("files");
        foreach (var file in listed.Files)
            json.WriteStringValue(file);
        json.WriteEndArray();
        json.WriteStartObject("field");
        At(json, "center_mm", part.Field.Centre);
        json.WriteNumber("turn_deg", (int)part.Field.Turn);
        if (part.Hooping.InThroat is { } cloth)
            json.WriteNumber("in_throat_mm", Millimetres(cloth));
        json.WriteEndObject();
        json.WriteNumber("stitches", figures.Counts.Stitches);
        if (job.Drawing.IsStitched)
            Sources(json, part);
        json.WriteNumber("jumps", figures.Counts.Jumps);
        json.WriteNumber("trims", figures.Counts.Trims);
        json.WriteNumber("stops", figures.Counts.Stops);
        var bounds = figures.Counts.Bounds;
        json.WriteStartArray("bounds_mm");
        foreach (var edge in (ReadOnlySpan<int>)[bounds.Left, bounds.Bottom, bounds.Right, bounds.Top])
            json.WriteNumberValue(Millimetres(edge * Units.TapeStep));
        json.WriteEndArray();
        json.WriteStartObject("thread_m");
        foreach (var (thread, metres) in figures.Threads)
            json.WriteNumber(thread, Rounded(metres, 2));
        json.WriteEndObject();
        json.WriteNumber("bobbin_m", Rounded(figures.BobbinMetres, 2));
        json.WriteNumber("minutes", Rounded(figures.Minutes, 1));
        json.WriteNumber("hooping_minutes", Rounded(Rates.HoopingMinutes(recipe.Machine, 1), 1));
        Steps(json, recipe, listed);
        Corners(json, plan, plan.Hoopings.IndexOf(part.Hooping));
        json.WriteEndObject();
    }

    /// <summary>
    /// How many of its stitches are the artwork's own, and how many another part sews as well, past a seam.
    /// </summary>
    private static void Sources(Utf8JsonWriter json, Part part)
    {
        var sources = NeedleWalk.Of(part).ToLookup(needle => needle.Stitch.Source);
        json.WriteNumber("original_stitches", sources[StitchSource.Original].Count());
        json.WriteNumber("overlap_stitches", sources[StitchSource.Repeated].Count());
    }

    private static void Steps(Utf8JsonWriter json, Recipe recipe, ListedPart listed)
    {
        json.WriteStartArray("steps");
        foreach (var step in listed.Part.Steps)
        {
            json.WriteStartObject();
            json.WriteNumber("number", step.Number);
            json.WriteString("kind", Words.Of(step.Kind));
            json.WriteString("thread", PartFigures.NameOf(step));
            json.WriteNumber("stitches", listed.Figures.Counts.Steps[step.Number - 1]);
            json.WriteNumber("minutes", Rounded(listed.Figures.StepMinutes(recipe.Machine, step), 1));
            // Programs read this: spaces that keep a number and its unit on one line are for pages.
            json.WriteString("stop", step.Stop?.Replace(Texts.Numbers.Space, " ", StringComparison.Ordinal));
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Corners(Utf8JsonWriter json, Plan plan, int index)
    {
        var hooping = plan.Hoopings[index];
        json.WriteStartArray("corners");
        foreach (
            var (number, sewn) in hooping.Takes.Select(i => (i, "first")).Concat(hooping.Gives.Select(i => (i, "last")))
        )
        {
            var corner = plan.Corners[number];
            json.WriteStartObject();
            json.WriteString("id", corner.Id);
            json.WriteNumber("x_mm", Millimetres(corner.At.X));
            json.WriteNumber("y_mm", Millimetres(corner.At.Y));
            json.WriteString("sewn", sewn);
            json.WriteStartArray("shared_with");
            foreach (var other in Users(corner).Where(h => h != index).Order())
                json.WriteStringValue(plan.Hoopings[other].Letter);
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }
}
