using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Splitter.Benchmarks.Figures;
using Splitter.Measures;

namespace Splitter.Benchmarks.Layers;

/// <summary>The table in DEVELOPERS.md of what makes too many layers: square millimetres by cause, as manifests have them.</summary>
internal static class LayerCensus
{
    /// <summary>The manifest's words, with a heading each.</summary>
    private static readonly ImmutableArray<(string Word, string Heading)> Causes =
    [
        ("shapes", "shapes alone"),
        ("rows", "rows of one shape"),
        ("overlap", "parts overlap"),
        ("travel", "hidden travel"),
        ("underlay", "underlay"),
        ("ties", "ties"),
    ];

    /// <summary>Writes the whole table, or prints the lines of some subjects.</summary>
    internal static int Write(string[] names)
    {
        IEnumerable<StitchSubject> subjects =
        [
            .. StitchSubject.Recipes.Select(r => StitchSubject.OfRecipe(r.Recipe, r.Hoop)),
            .. StitchSubject.Drawings.Select(d => StitchSubject.OfDrawing(d.Folder, d.Name)),
        ];
        var rows = new List<(string Name, ImmutableArray<int> Squares)>();
        foreach (var subject in subjects.Where(s => names.Length == 0 || names.Contains(s.Name)))
        {
            rows.Add((subject.Name, Squares(subject)));
            Console.Error.WriteLine(Line(rows[^1].Name, rows[^1].Squares));
        }
        if (names.Length == 0)
            FigureTable.Write(
                "layers by cause",
                [
                    $"| artwork | {string.Join(" | ", Causes.Select(c => c.Heading))} | mm² in all |",
                    $"| --- {string.Concat(Causes.Select(_ => "| ---: "))}| ---: |",
                    .. rows.Where(r => r.Squares.Any(s => s > 0)).Select(r => Line(r.Name, r.Squares)),
                    Line("all", [.. Causes.Select((_, i) => rows.Sum(r => r.Squares[i]))]),
                ]
            );
        return 0;
    }

    /// <summary>Of one subject by cause, mm².</summary>
    private static ImmutableArray<int> Squares(StitchSubject subject)
    {
        var set = Pipeline.Make(subject.Request).Value.Sets.Single();
        var file = set.Files.Single(f => f.Path.EndsWith("manifest.json", StringComparison.Ordinal));
        using var manifest = JsonDocument.Parse(file.Bytes);
        List<JsonElement> dense = manifest.RootElement.TryGetProperty("dense", out var list)
            ? [.. list.EnumerateArray().Select(spot => spot.GetProperty("causes_mm2"))]
            : [];
        return
        [
            .. Causes.Select(cause =>
                dense.Sum(causes => causes.TryGetProperty(cause.Word, out var squares) ? squares.GetInt32() : 0)
            ),
        ];
    }

    private static string Line(string name, ImmutableArray<int> squares) =>
        string.Create(CultureInfo.InvariantCulture, $"| {name} | {string.Join(" | ", squares)} | {squares.Sum()} |");
}
