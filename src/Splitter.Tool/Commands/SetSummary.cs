using System.Text.Json;
using System.Text.Json.Serialization;
using Splitter.Tool.Disk;
using static System.FormattableString;

namespace Splitter.Tool.Commands;

/// <summary>The figures of one set, as its manifest states them: whoever reads both finds the same.</summary>
internal sealed record SetSummary(
    string Recipe,
    string Hoop,
    int Parts,
    int Stitches,
    int Trims,
    int Stops,
    double Minutes,
    [property: JsonPropertyName("worst_error_95_mm")] double? WorstErrorMm,
    string Folder,
    IReadOnlyList<string> Files
)
{
    internal static SetSummary Of(Made made, PartSet set, SetFolder folder)
    {
        var manifest = set.Files.Single(f => f.Path == $"{folder.Hoop}/{OwnFiles.Manifest}");
        using var document = JsonDocument.Parse(manifest.Bytes);
        var parts = document.RootElement.GetProperty("parts").EnumerateArray().ToArray();
        var joins = document
            .RootElement.GetProperty("joins")
            .EnumerateArray()
            .Select(join => join.GetProperty("within_95_mm").GetDouble())
            .ToArray();
        int Sum(string key) => parts.Sum(part => part.GetProperty(key).GetInt32());
        return new(
            made.Recipe.Given,
            folder.Hoop,
            parts.Length,
            Sum("stitches"),
            Sum("trims"),
            Sum("stops"),
            Math.Round(parts.Sum(part => part.GetProperty("minutes").GetDouble()), 1),
            joins.Length == 0 ? null : joins.Max(),
            folder.Path.Replace('\\', '/'),
            [.. set.Files.Select(f => f.Path.Split('/')[^1])]
        );
    }

    internal static string Table(IEnumerable<SetSummary> sets)
    {
        var table = new TextTable(
            "hoop",
            "parts",
            "stitches",
            "trims",
            "stops",
            "minutes",
            "worst error, 95 %",
            "folder"
        );
        foreach (var s in sets)
            table.Add(
                s.Hoop,
                Invariant($"{s.Parts}"),
                Invariant($"{s.Stitches}"),
                Invariant($"{s.Trims}"),
                Invariant($"{s.Stops}"),
                Invariant($"{s.Minutes:0}"),
                s.WorstErrorMm is { } error ? Invariant($"{error:0.00} mm") : "0 (no joins)",
                s.Folder
            );
        return table.ToString();
    }
}
