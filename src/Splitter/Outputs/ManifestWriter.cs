using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using System.Text.Encodings.Web;
using System.Text.Json;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Stitching.Density;

namespace Splitter.Outputs;

/// <summary>A part, its figures and its files, as the manifest lists it.</summary>
internal sealed record ListedPart(Part Part, PartFigures Figures, ImmutableArray<string> Files);

/// <summary>
/// <c>manifest.json</c>: what was made of what. UTF-8, LF, keys in a fixed order, lengths in millimetres with at most
/// three decimals. No path of a machine is in it: files have their names, sources the names that the recipe gives them.
/// </summary>
internal static class ManifestWriter
{
    internal const string FileName = "manifest.json";

    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        IndentSize = 1,
        NewLine = "\n",
        // The file is read as JSON alone, never inside a web page: letters stay readable.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static readonly string Version = typeof(ManifestWriter)
        .Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!
        .InformationalVersion;

    /// <param name="origin">What else the parts were made of, for parts that are not those of the plan.</param>
    internal static byte[] Write(
        Request request,
        Job job,
        Plan plan,
        ImmutableArray<ListedPart> parts,
        WorkFigures work,
        ImmutableArray<DenseSpot> dense,
        Action<Utf8JsonWriter>? origin = null
    )
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            json.WriteNumber("manifest", 1);
            json.WriteStartObject("tool");
            json.WriteString("name", "splitter");
            json.WriteString("version", Version);
            json.WriteEndObject();
            json.WriteString("title", job.Recipe.Title);
            Sources(json, request, job);
            origin?.Invoke(json);
            Sizes(json, job, plan);
            Threads(json, job.Drawing, parts);
            json.WriteStartArray("parts");
            foreach (var part in parts)
                ManifestPart.Write(json, job, plan, part);
            json.WriteEndArray();
            Totals(json, work);
            ManifestJoins.Write(json, plan);
            json.WriteStartObject("seams");
            json.WriteNumber("cost", Rounded(plan.Seams.Cost, 1));
            json.WriteNumber("straight_cost", Rounded(plan.Seams.StraightCost, 1));
            json.WriteNumber("cut_shapes", plan.Seams.CutShapes);
            TurnedLayers(json, job.Drawing, plan);
            json.WriteEndObject();
            ManifestDense.Write(json, job.Drawing, plan, dense);
            json.WriteEndObject();
        }
        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static void Sources(Utf8JsonWriter json, Request request, Job job)
    {
        json.WritePropertyName("recipe");
        Source(json, request.FileName, request.Bytes);
        json.WriteStartArray("inputs");
        foreach (var source in job.Sources)
            Source(json, source.Path, source.Bytes);
        json.WriteEndArray();
    }

    private static void Source(Utf8JsonWriter json, string file, ReadOnlyMemory<byte> bytes)
    {
        json.WriteStartObject();
        json.WriteString("file", file);
        json.WriteString("sha256", SumsWriter.Sum(bytes.Span));
        json.WriteEndObject();
    }

    private static void Sizes(Utf8JsonWriter json, Job job, Plan plan)
    {
        json.WriteStartObject("hoop");
        json.WriteString("name", plan.Hoop.Name);
        json.WriteNumber("width_mm", Millimetres(plan.Hoop.Width));
        json.WriteNumber("height_mm", Millimetres(plan.Hoop.Height));
        json.WriteEndObject();
        json.WriteStartObject("artwork");
        json.WriteNumber("width_mm", Millimetres(job.Drawing.Width));
        json.WriteNumber("height_mm", Millimetres(job.Drawing.Height));
        json.WriteNumber("shapes", job.Drawing.Shapes.Length);
        if (job.Drawing.IsStitched)
            json.WriteNumber("stitches", job.Drawing.Shapes.SelectMany(s => s.Original).Sum(t => t.OwnStitches));
        json.WriteEndObject();
        var cloth = job.Recipe.Cloth;
        json.WriteStartObject("cloth");
        json.WriteString("color", cloth.Color);
        json.WriteNumber("thickness_mm", Millimetres(cloth.Thickness));
        json.WriteEndObject();
        json.WriteStartObject("fields");
        json.WriteNumber("count", plan.Hoopings.Length);
        json.WriteNumber("lower_bound", plan.LowerBound);
        if (plan.IsProven is { } proven)
            json.WriteBoolean("proven", proven);
        else
            json.WriteNull("proven");
        json.WriteEndObject();
    }

    /// <summary>
    /// Those that a part is sewn with, in the drawing's order: what steps name has its colour here. Marks are sewn with
    /// whatever thread shows on the cloth.
    /// </summary>
    private static void Threads(Utf8JsonWriter json, Drawing drawing, ImmutableArray<ListedPart> parts)
    {
        var used = parts.SelectMany(p => p.Part.Steps).Select(s => s.Thread).ToHashSet();
        json.WriteStartArray("threads");
        foreach (var thread in drawing.Threads.Where(used.Contains))
        {
            json.WriteStartObject();
            json.WriteString("name", thread.Name);
            json.WriteString("color", thread.Color);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    /// <summary>Of all parts: minutes at the machine and those for hooping beside it; thread with its waste.</summary>
    private static void Totals(Utf8JsonWriter json, WorkFigures work)
    {
        json.WriteStartObject("totals");
        json.WriteNumber("stitches", work.Stitches);
        json.WriteNumber("trims", work.Trims);
        json.WriteNumber("stops", work.Stops);
        json.WriteStartObject("thread_m");
        foreach (var thread in work.Threads)
            json.WriteNumber(thread.Name, Rounded(thread.Metres, 2));
        json.WriteEndObject();
        json.WriteNumber("bobbin_m", Rounded(work.BobbinMetres, 2));
        json.WriteNumber("minutes", Rounded(work.Minutes, 1));
        json.WriteNumber("hooping_minutes", Rounded(work.HoopingMinutes, 1));
        json.WriteEndObject();
    }

    private static void TurnedLayers(Utf8JsonWriter json, Drawing drawing, Plan plan)
    {
        json.WriteStartArray("turned_layers");
        foreach (var turned in plan.TurnedLayers)
        {
            json.WriteStartObject();
            json.WriteString("upper", drawing.Shapes[turned.Upper].Id);
            json.WriteString("lower", drawing.Shapes[turned.Lower].Id);
            json.WriteStartArray("parts");
            json.WriteStringValue(plan.Hoopings[turned.First].Letter);
            json.WriteStringValue(plan.Hoopings[turned.Then].Letter);
            json.WriteEndArray();
            At(json, "at_mm", turned.At);
            json.WriteNumber("area_mm2", Rounded(turned.Area / Units.SquareMillimetre, 3));
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    /// <summary>Every hooping that sews a corner.</summary>
    internal static ImmutableArray<int> Users(Corner corner) => corner.Receivers.Add(corner.Donor);

    internal static void At(Utf8JsonWriter json, string name, Point point)
    {
        json.WriteStartArray(name);
        json.WriteNumberValue(Millimetres(point.X));
        json.WriteNumberValue(Millimetres(point.Y));
        json.WriteEndArray();
    }

    internal static decimal Millimetres(int micrometres) => Rounded((decimal)micrometres / Units.Millimetre, 3);

    internal static decimal Rounded(double value, int decimals) => Rounded((decimal)value, decimals);

    /// <summary>Without trailing zeros.</summary>
    private static decimal Rounded(decimal value, int decimals) =>
        decimal.Parse(
            Math.Round(value, decimals, MidpointRounding.AwayFromZero).ToString("0.###", CultureInfo.InvariantCulture),
            CultureInfo.InvariantCulture
        );
}
