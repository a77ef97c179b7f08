using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Xml.Linq;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Outputs.Tapes;
using Splitter.Parts;
using Splitter.Planning;

namespace Splitter.Outputs.Sheets.Watching;

/// <summary>
/// Where a part is watched being sewn: hidden, and holding the tape as data, until the page's script makes a picture
/// and buttons there. On paper and without script nothing of it shows.
/// </summary>
internal static class WatchSection
{
    /// <summary>
    /// Stitches a second that one can choose from: slow enough to follow a needle, quick enough to see a part grow.
    /// </summary>
    private static readonly int[] Speeds = [5, 25, 100, 500, 2000];

    private const int UsualSpeed = 100;

    /// <summary>
    /// Height of a corner's name as the script draws it, µm: 22 pixels' font at 5 pixels a millimetre.
    /// </summary>
    private const int NameHeight = 3800;

    /// <summary>Texts of the script; their keys begin so.</summary>
    private const string Prefix = "watch.";

    /// <summary>Escapes all that HTML or XML could take for an end of the data.</summary>
    private static readonly JsonWriterOptions Strict = new() { Encoder = JavaScriptEncoder.Default };

    internal static XElement Of(SheetContent sheet, Part part) =>
        Html.Element(
            "div",
            new XAttribute("class", "watch"),
            new XAttribute("hidden", "hidden"),
            Html.Element("script", new XAttribute("type", "application/json"), Json(json => Data(json, sheet, part)))
        );

    /// <summary>Once in a page: what the script says, and the script.</summary>
    internal static IEnumerable<XElement> Script(SheetContent sheet) =>
        [
            Html.Element(
                "script",
                new XAttribute("type", "application/json"),
                new XAttribute("id", "watch-words"),
                Json(json =>
                {
                    json.WriteStartObject();
                    foreach (var (key, text) in sheet.Say.Beginning(Prefix))
                        json.WriteString(key, text);
                    json.WriteEndObject();
                })
            ),
            // HTML takes a script as it stands, XML needs its signs guarded: a comment of the one is the guard of the
            // other.
            Html.Element("script", "//", new XCData($"\n{PageFile.Read("watch.js")}//")),
        ];

    private static string Json(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Strict))
            write(json);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void Data(Utf8JsonWriter json, SheetContent sheet, Part part)
    {
        var packed = PackedTape.Of(PartTape.Of(part, sheet.Recipe.Title));
        var hoop = part.Field.Hoop;
        json.WriteStartObject();
        json.WriteString("part", part.Letter);
        json.WriteNumber("halfU", hoop.Width / 2 / Units.TapeStep);
        json.WriteNumber("halfV", hoop.Height / 2 / Units.TapeStep);
        json.WriteString("cloth", sheet.Recipe.Cloth.Color);
        json.WriteString("ink", MarkInk.Corner.ToString());
        json.WriteNumber("speed", UsualSpeed);
        json.WriteStartArray("speeds");
        foreach (var speed in Speeds)
            json.WriteNumberValue(speed);
        json.WriteEndArray();
        json.WriteStartArray("steps");
        foreach (var step in part.Steps)
            Step(json, sheet, step);
        json.WriteEndArray();
        json.WriteStartArray("corners");
        var corners = part.Hooping.Takes.Concat(part.Hooping.Gives).Select(i => sheet.Plan.Corners[i]).ToList();
        foreach (var (corner, name) in corners.Zip(Names(corners, part.Field)))
            Corner(json, part.Field, corner, name);
        json.WriteEndArray();
        json.WriteStartArray("runs");
        foreach (var number in packed.Runs)
            json.WriteNumberValue(number);
        json.WriteEndArray();
        json.WriteString("moves", packed.Moves);
        json.WriteEndObject();
    }

    private static void Step(Utf8JsonWriter json, SheetContent sheet, Step step)
    {
        json.WriteStartObject();
        json.WriteString("name", sheet.NameOf(step.Thread));
        json.WriteString("color", step.Thread?.Color ?? MarkInk.Alignment.ToString());
        json.WriteString("stop", step.Stop ?? "");
        json.WriteEndObject();
    }

    /// <summary>Where the middles of their names stand in the hoop, clear of all corners and of each other.</summary>
    private static List<Point> Names(List<Corner> corners, Field field)
    {
        var frame = new HoopFrame(field);
        var room = new LabelRoom(frame.Inside, NameHeight);
        var laid = corners.ConvertAll(c => (c.Id, At: frame.Lay(c.At), X: frame.Lay(c.ArmX), Y: frame.Lay(c.ArmY)));
        foreach (var (_, at, x, y) in laid)
        {
            room.Take(Box.Around([at, x]));
            room.Take(Box.Around([at, y]));
        }
        return laid.ConvertAll(c =>
            MarkName.Of(c.Id, c.At, c.X, c.Y, room, NameHeight).Box.Centre - frame.Inside.Centre
        );
    }

    private static void Corner(Utf8JsonWriter json, Field field, Corner corner, Point name)
    {
        json.WriteStartObject();
        json.WriteString("id", corner.Id);
        json.WriteStartArray("arms");
        foreach (var point in new[] { corner.ArmX, corner.At, corner.ArmY })
        {
            var at = TapePoint.Of(field, point);
            json.WriteStartArray();
            json.WriteNumberValue(at.U);
            json.WriteNumberValue(at.V);
            json.WriteEndArray();
        }
        json.WriteEndArray();
        json.WriteStartArray("name");
        json.WriteNumberValue(name.X / Units.TapeStep);
        json.WriteNumberValue(-name.Y / Units.TapeStep);
        json.WriteEndArray();
        json.WriteEndObject();
    }
}
