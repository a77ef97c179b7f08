using System.Collections.Immutable;
using System.Text;
using System.Text.Json;

namespace Splitter.BrowserTests;

/// <summary>A work in several parts, made once in each language, its sheet in a folder of its own.</summary>
internal sealed class Sheet
{
    private static readonly ImmutableDictionary<string, Lazy<Sheet>> Small = InBoth(Sails);
    private static readonly ImmutableDictionary<string, Lazy<Sheet>> Colourful = InBoth(Threads);

    private static ImmutableDictionary<string, Lazy<Sheet>> InBoth(Func<string, string> recipe) =>
        new[] { "en", "de" }.ToImmutableDictionary(
            language => language,
            language => new Lazy<Sheet>(() => new(recipe(language)))
        );

    private static string Sails(string language) =>
        $$"""
            splitter: 1
            title: "Two sails & a <mast>"
            artwork:
              shapes:
                - { wkt: "POLYGON ((10 190, 100 10, 100 190, 10 190))", id: mainsail, fill: "#14304f" }
                - { wkt: "POLYGON ((108 190, 108 120, 250 190, 108 190))", id: jib, fill: "#c23b2e" }
                - { wkt: "LINESTRING (104 4, 104 200)", id: mast, stroke: "#76584a", stroke-width: 2 mm }
            threads: [{ name: "night & day", color: "#14304f" }]
            cloth: { size: 300 x 280 mm, artwork-at: [20 mm, 40 mm], folds: { upright: centre, level: 1 in from bottom } }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: parts, files: [worksheet], language: {{language}}, paper: {{(
                language == "de" ? "Letter" : "A4"
            )}} }
            """;

    /// <summary>Zigzags of ever more threads from left to right: parts of few steps and of many.</summary>
    private static string Threads(string language)
    {
        var zigzags = Enumerable
            .Range(0, 18)
            .Select(i =>
                $"    - {{ wkt: \"LINESTRING ({10 * i} {10 + i}, 330 {100 + (8 * i)}, {10 * i} {320 - i})\", "
                + $"stroke: \"#{40 + (10 * i):x2}{220 - (10 * i):x2}{90 + (5 * i):x2}\", stroke-width: 0.6 mm }}"
            );
        return $$"""
            splitter: 1
            title: Zigzags
            artwork:
              shapes:
            {{string.Join('\n', zigzags)}}
            cloth: { size: 400 x 400 mm, artwork-at: [30 mm, 30 mm], folds: { upright: centre, level: centre } }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: parts, files: [worksheet, template], language: {{language}} }
            """;
    }

    private Sheet(string recipe)
    {
        var made = Pipeline.Make(new("work.yaml", Encoding.UTF8.GetBytes(recipe), _ => default));
        var files = made.Value.Sets.Single().Files.ToDictionary(f => Path.GetFileName(f.Path), f => f.Bytes.ToArray());
        File = Path.Combine(Directory.CreateTempSubdirectory("splitter-sheet-").FullName, "worksheet.html");
        System.IO.File.WriteAllBytes(File, files["worksheet.html"]);
        using var manifest = JsonDocument.Parse(files["manifest.json"]);
        Parts =
        [
            .. manifest
                .RootElement.GetProperty("parts")
                .EnumerateArray()
                .Select(part => new SheetPart(
                    part.GetProperty("letter").GetString()!,
                    part.GetProperty("stitches").GetInt32(),
                    part.GetProperty("stops").GetInt32(),
                    [
                        .. part.GetProperty("steps")
                            .EnumerateArray()
                            .Select(s => s.GetProperty("stop").GetString())
                            .OfType<string>(),
                    ]
                )),
        ];
    }

    internal string File { get; }

    internal ImmutableArray<SheetPart> Parts { get; }

    internal static Sheet In(string language) => Small[language].Value;

    /// <summary>Of many threads and parts.</summary>
    internal static Sheet ColourfulIn(string language) => Colourful[language].Value;
}

/// <summary>What the manifest says of a part.</summary>
internal sealed record SheetPart(string Letter, int Stitches, int Stops, ImmutableArray<string> StopTexts);
