using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Splitter.Measures;

/// <summary>Thread that lies on the cloth between a jump and the next.</summary>
/// <param name="Part">Letter of its part.</param>
/// <param name="Step">Number of its step.</param>
/// <param name="Color">Of its thread.</param>
/// <param name="Points">Penetrations on the drawing, tenths of a millimetre.</param>
public sealed record SewnRun(string Part, int Step, string Color, IReadOnlyList<(int X, int Y)> Points)
{
    /// <summary>Length of thread on the cloth, mm.</summary>
    public double Length => Points.Zip(Points.Skip(1), Distance).Sum();

    /// <summary>Between two penetrations, mm.</summary>
    public static double Distance((int X, int Y) a, (int X, int Y) b) =>
        Math.Sqrt(Square(a.X - b.X) + Square(a.Y - b.Y)) / 10;

    private static double Square(double d) => d * d;
}

/// <summary>
/// The finished cloth: every part decoded from its tape by <see cref="PlainTape"/> and laid back on the drawing by the
/// manifest alone, in sewing order. Marks are left out.
/// </summary>
/// <param name="Width">Of the artwork, mm.</param>
/// <param name="Height">Of the artwork, mm.</param>
/// <param name="Runs">In sewing order, of every part.</param>
public sealed record SewnCloth(double Width, double Height, IReadOnlyList<SewnRun> Runs)
{
    /// <summary>How wide thread no. 40 lies, mm (common practice, no source).</summary>
    public const double ThreadWidth = 0.4;

    /// <summary>Lays a set of files back.</summary>
    public static SewnCloth Of(PartSet set)
    {
        var files = set.Files.ToDictionary(f => f.Path.Split('/')[^1], f => f.Bytes.ToArray());
        using var manifest = JsonDocument.Parse(files["manifest.json"]);
        var colours = manifest
            .RootElement.GetProperty("threads")
            .EnumerateArray()
            .ToDictionary(t => t.GetProperty("name").GetString()!, t => t.GetProperty("color").GetString()!);
        var size = manifest.RootElement.GetProperty("artwork");
        var runs = manifest.RootElement.GetProperty("parts").EnumerateArray().SelectMany(Runs).ToList();
        return new(size.GetProperty("width_mm").GetDouble(), size.GetProperty("height_mm").GetDouble(), runs);

        IEnumerable<SewnRun> Runs(JsonElement part)
        {
            var letter = part.GetProperty("letter").GetString()!;
            var sewn = PlainTape.Steps(files[$"part-{letter}.dst"]);
            foreach (var (step, i) in part.GetProperty("steps").EnumerateArray().Select((s, i) => (s, i)))
                if (step.GetProperty("kind").GetString() == "body")
                    foreach (var run in sewn[i])
                        yield return new(
                            letter,
                            step.GetProperty("number").GetInt32(),
                            colours[step.GetProperty("thread").GetString()!],
                            [.. run.Select(p => LaidBack.OnDrawing(part, p))]
                        );
        }
    }

    /// <summary>The thread as an SVG, each run in its colour, later runs over earlier ones.</summary>
    public string Picture()
    {
        var svg = new StringBuilder();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<svg xmlns='http://www.w3.org/2000/svg' width='{Width}mm' height='{Height}mm' viewBox='0 0 {Width} {Height}' fill='none' stroke-width='{ThreadWidth}' stroke-linecap='round' stroke-linejoin='round'>"
        );
        foreach (var run in Runs)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<path stroke='{run.Color}' d='M");
            foreach (var (x, y) in run.Points)
                svg.Append(CultureInfo.InvariantCulture, $" {x / 10.0:0.0} {y / 10.0:0.0}");
            svg.Append("'/>");
        }
        return svg.Append("</svg>").ToString();
    }
}
