using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Json.Schema;
using Splitter.Recipes.Descriptions;
using YamlDotNet.Serialization;

namespace Splitter.Tests.Recipes.Descriptions;

/// <summary>
/// What editors are told of the language against what the reader makes of it. The judge is a validator of its own
/// (JsonSchema.Net), which sees recipes as a YAML library reads them (YamlDotNet's deserializer).
/// </summary>
public sealed partial class SchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(RecipeSchema.Write());

    /// <summary>What the schema can see. Ranges, and what keys ask of each other, it cannot.</summary>
    private static readonly string[] Structural =
    [
        "SPL1016", // no keys at all
        "SPL1020", // unknown key
        "SPL1021", // missing key
        "SPL1030", // wrong form
        "SPL1031", // no value
        "SPL1032", // no unit
        "SPL1033", // unknown unit
        "SPL1035", // decimal comma
        "SPL1036", // unit on the first side only
        "SPL1037", // unknown word
        "SPL1038", // not a right angle
        "SPL1040", // listed twice
        "SPL1042", // too few or too many
        "SPL1045", // unknown extension
    ];

    public static TheoryData<string> Right =>
        [
            .. Directory
                .EnumerateFiles(Golden.Project, "recipe.yaml", SearchOption.AllDirectories)
                .Concat(Directory.EnumerateFiles(Repository.Path("recipes"), "*.yaml"))
                .Where(file => !file.Contains(Golden.Source("Recipes", "Cases"), StringComparison.Ordinal))
                .Where(file => !file.Contains("/bin/", StringComparison.Ordinal))
                .Order(StringComparer.Ordinal)
                .Select(file => Path.GetRelativePath(Repository.Root, file)),
        ];

    public static TheoryData<string> Wrong =>
        [
            .. Golden
                .Cases("Recipes", "Cases")
                .Where(name => Codes(Golden.Source("Recipes", "Cases", name, "expected.txt")).Any(Structural.Contains)),
        ];

    [Theory]
    [MemberData(nameof(Right))]
    public void ARecipeThatCanBeReadFits(string file) => Assert.Equal("", Faults(Repository.Path(file)));

    [Theory]
    [MemberData(nameof(Wrong))]
    public void AMistakeOfFormIsSeen(string name) =>
        Assert.NotEqual("", Faults(Golden.Source("Recipes", "Cases", name, "recipe.yaml")));

    [Fact]
    public void TheRecipeInTheReadMeFits()
    {
        var text = File.ReadAllText(Repository.Path("README.md")).ReplaceLineEndings("\n");
        Assert.Equal("", FaultsOf(text.Split("```yaml\n")[1].Split("```")[0]));
    }

    [Fact]
    public void TheSchemaItselfIsOne() =>
        Assert.True(MetaSchemas.Draft202012.Evaluate(JsonNode.Parse(RecipeSchema.Write())).IsValid);

    /// <summary>Each key by itself: what its table gives as example and default fits, and what no key takes does not.</summary>
    [Fact]
    public void ExamplesAndDefaultsFitAndNonsenseDoesNot()
    {
        var keys = KeysOf(JsonNode.Parse(RecipeSchema.Write())!).ToList();
        Assert.Equal(RecipeKeysTests.Count, keys.Count);
        foreach (var (path, key) in keys)
        {
            var schema = JsonSchema.FromText(key.ToJsonString());
            Assert.True(schema.Evaluate(key["examples"]![0]).IsValid, $"{path}: example");
            if (key["default"] is { } value)
                Assert.True(schema.Evaluate(value).IsValid, $"{path}: default");
            foreach (var nonsense in (string[])["null", "{\"no-such-key\": 1}", "[[1]]", "\"\"", "1.5", "-7"])
                if (!Takes(key, nonsense))
                    Assert.False(schema.Evaluate(JsonNode.Parse(nonsense)).IsValid, $"{path}: {nonsense}");
            Assert.EndsWith(".", key["description"]!.GetValue<string>(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void TheSchemaAtTheRecipesIsThisOne() =>
        Golden.Check(Repository.Path("recipes", "splitter.schema.json"), RecipeSchema.Write());

    [Fact]
    public void ThePageAtTheRecipesIsThisOne() =>
        Golden.Check(Repository.Path("recipes", "REFERENCE.md"), ReferencePage.Write());

    [Fact]
    public void LinksOfThePageLeadToItsHeadings()
    {
        var page = ReferencePage.Write();
        var anchors = page.Split('\n')
            .Where(line => line.StartsWith("## ", StringComparison.Ordinal))
            .Select(line => NotInAnAnchor().Replace(line[3..].ToLowerInvariant(), "").Replace(' ', '-'))
            .ToHashSet();
        var links = Link().Matches(page).Select(m => m.Groups["to"].Value).Distinct().ToList();
        Assert.NotEmpty(links);
        Assert.Empty(links.Except(anchors));
    }

    /// <summary>The demo recipes tell editors of the schema, in a comment that several of them heed.</summary>
    [Fact]
    public void TheDemoRecipesNameTheSchema() =>
        Assert.All(
            Directory.GetFiles(Repository.Path("recipes"), "*.yaml"),
            file =>
                Assert.StartsWith(
                    "# yaml-language-server: $schema=splitter.schema.json\n",
                    File.ReadAllText(file).ReplaceLineEndings("\n"),
                    StringComparison.Ordinal
                )
        );

    /// <summary>Free text may be any plain value, and angles and points may be negative.</summary>
    private static bool Takes(JsonNode key, string value) =>
        value is "1.5" or "-7" && key["type"] is JsonArray types && types.Any(t => t!.GetValue<string>() == "number");

    private static string Faults(string file) => FaultsOf(File.ReadAllText(file));

    private static string FaultsOf(string yaml)
    {
        // YAML 1.2.2, section 10.3.2: plain numbers and truth values are no text.
        var read = new DeserializerBuilder()
            .WithAttemptingUnquotedStringTypeDeserialization()
            .Build()
            .Deserialize<object?>(yaml);
        var result = Schema.Evaluate(Json(read), new() { OutputFormat = OutputFormat.List });
        return result.IsValid
            ? ""
            : string.Join(
                '\n',
                result
                    .Details.Where(d => d.HasErrors)
                    .Select(d => $"{d.InstanceLocation}: {string.Join("; ", d.Errors!.Values)}")
            );
    }

    private static JsonNode? Json(object? read) =>
        read switch
        {
            IDictionary<object, object?> mapping => new JsonObject(
                mapping.Select(e => KeyValuePair.Create($"{e.Key}", Json(e.Value)))
            ),
            IList<object?> list => new JsonArray([.. list.Select(Json)]),
            null => null,
            // JSON has no infinity; any number is as little text.
            float or double when !double.IsFinite(Convert.ToDouble(read, CultureInfo.InvariantCulture)) => 0,
            _ => JsonSerializer.SerializeToNode(read),
        };

    private static IEnumerable<(string Path, JsonNode Key)> KeysOf(JsonNode schema, string path = "")
    {
        foreach (var (name, key) in schema["properties"]?.AsObject() ?? [])
        foreach (var found in KeysOf(key!, $"{path}.{name}").Prepend(($"{path}.{name}", key!)))
            yield return found;
        foreach (var part in (schema["anyOf"]?.AsArray() ?? []).Append(schema["items"]).OfType<JsonNode>())
        foreach (var found in KeysOf(part, $"{path}/"))
            yield return found;
    }

    /// <summary>Those of the recipe; what stands in included files, its schema does not see.</summary>
    private static IEnumerable<string> Codes(string file) =>
        Code().Matches(File.ReadAllText(file)).Select(m => m.Groups["code"].Value);

    [GeneratedRegex(
        @"^recipe\.yaml[^:]*: error (?<code>SPL[0-9]{4})",
        RegexOptions.ExplicitCapture | RegexOptions.Multiline,
        1000
    )]
    private static partial Regex Code();

    [GeneratedRegex(@"\]\(#(?<to>[^)]+)\)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Link();

    [GeneratedRegex("[^a-z0-9 -]", RegexOptions.None, 1000)]
    private static partial Regex NotInAnAnchor();
}
