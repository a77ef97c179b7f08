using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Splitter.Diagnostics;

namespace Splitter.Tool.Commands.Comparing;

/// <summary>Findings and warnings as SARIF 2.1.0 (OASIS), which reviewing tools read.</summary>
internal static class SarifLog
{
    private const string Schema =
        "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

    internal static JsonObject Of(ImmutableArray<Finding> findings, ImmutableArray<Diagnostic> warnings) =>
        new()
        {
            ["$schema"] = Schema,
            ["version"] = "2.1.0",
            ["runs"] = new JsonArray(
                new JsonObject
                {
                    ["tool"] = new JsonObject
                    {
                        ["driver"] = new JsonObject
                        {
                            ["name"] = "splitter",
                            ["version"] = ToolVersion.Text,
                            ["rules"] = new JsonArray([.. FindingRule.All.Select(Rule)]),
                        },
                    },
                    ["columnKind"] = "utf16CodeUnits",
                    ["results"] = new JsonArray([.. findings.Select(Result), .. warnings.Select(Result)]),
                }
            ),
        };

    private static JsonNode Rule(FindingRule rule) =>
        new JsonObject { ["id"] = rule.Id, ["shortDescription"] = Message(rule.Text) };

    private static JsonNode Result(Finding finding)
    {
        var result = Result(finding.Rule.Id, finding.IsNote ? "note" : "warning", finding.Message, finding.Place);
        result["ruleIndex"] = FindingRule.All.IndexOf(finding.Rule);
        if (finding.Artwork is { } drawn)
            result["relatedLocations"] = new JsonArray(Location(drawn));
        return result;
    }

    private static JsonNode Result(Diagnostic warning) =>
        Result(warning.Code, "warning", warning.Message, warning.Place);

    private static JsonObject Result(string rule, string level, string message, Place place) =>
        new()
        {
            ["ruleId"] = rule,
            ["level"] = level,
            ["message"] = Message(message),
            ["locations"] = new JsonArray(Location(place)),
        };

    private static JsonObject Message(string text) => new() { ["text"] = text };

    private static JsonObject Location(Place place)
    {
        var where = new JsonObject { ["artifactLocation"] = new JsonObject { ["uri"] = UriOf(place.File) } };
        if (place.Line > 0)
            where["region"] = new JsonObject { ["startLine"] = place.Line, ["startColumn"] = place.Column };
        return new() { ["physicalLocation"] = where };
    }

    /// <summary>A path as RFC 3986 has it: relative to where the person is, unless it begins at the root.</summary>
    private static string UriOf(string file) =>
        Path.IsPathRooted(file)
            ? new Uri(file).AbsoluteUri
            : string.Join('/', file.Replace('\\', '/').Split('/').Select(Uri.EscapeDataString));
}
