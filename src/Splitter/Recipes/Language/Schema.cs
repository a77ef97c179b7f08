using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Splitter.Recipes.Yaml;

namespace Splitter.Recipes.Language;

/// <summary>
/// Pieces of JSON Schema 2020-12. It judges what an editor makes of the YAML: plain <c>12</c> is a number there and
/// plain
/// <c>true</c> no text (YAML 1.2.2, section 10.3.2, the core schema).
/// </summary>
internal static partial class Schema
{
    /// <summary>Text that fits a pattern as a whole.</summary>
    internal static JsonObject Text(string pattern) => new() { ["type"] = "string", ["pattern"] = $"^({pattern})$" };

    /// <summary>The same, where a number or a truth value without quotation marks is text, too.</summary>
    internal static JsonObject AnyText(string pattern)
    {
        var text = Text(pattern);
        text["type"] = new JsonArray("string", "number", "boolean");
        return text;
    }

    internal static JsonObject Words(params ReadOnlySpan<string> words) =>
        new() { ["enum"] = new JsonArray([.. words.ToArray().Select(Plain)]) };

    internal static JsonObject AnyOf(params JsonNode[] alternatives) =>
        new() { ["anyOf"] = new JsonArray(alternatives) };

    internal static JsonObject List(Kind item, int least, int most) =>
        new()
        {
            ["type"] = "array",
            ["items"] = item.ToSchema(),
            ["minItems"] = least,
            ["maxItems"] = most,
        };

    internal static JsonObject Mapping(ImmutableArray<Key> keys) =>
        new()
        {
            ["type"] = "object",
            ["properties"] = new JsonObject(keys.Select(k => KeyValuePair.Create(k.Name, (JsonNode?)Of(k)))),
            ["required"] = new JsonArray([.. keys.Where(k => k.Required).Select(k => (JsonNode)k.Name)]),
            ["additionalProperties"] = false,
        };

    /// <summary>A key: what it says, what counts without it, an example, and what its value may be.</summary>
    internal static JsonObject Of(Key key)
    {
        var without = key.Otherwise is null ? "" : $" If left out: {key.Otherwise}.";
        var schema = new JsonObject { ["description"] = $"{key.Says} Takes {key.Kind.Expects}.{without}" };
        if (key.Default is not null)
            schema["default"] = Value(key.Default);
        schema["examples"] = new JsonArray(Value(key.Example));
        var kind = key.Kind.ToSchema();
        foreach (var (name, value) in kind.ToArray())
        {
            kind.Remove(name);
            schema[name] = value;
        }
        return schema;
    }

    private static JsonNode Value(string yaml)
    {
        List<Diagnostics.Diagnostic> problems = [];
        return YamlLoader.Load("value", Encoding.UTF8.GetBytes(yaml), problems) is { } node && problems.Count == 0
            ? Value(node)
            : throw new InvalidOperationException(string.Join('\n', problems));
    }

    private static JsonNode Value(Node node) =>
        node switch
        {
            MappingNode mapping => new JsonObject(
                mapping.Entries.Select(e => KeyValuePair.Create(e.Key, (JsonNode?)Value(e.Value)))
            ),
            SequenceNode sequence => new JsonArray([.. sequence.Items.Select(Value)]),
            ScalarNode { Quoted: true } scalar => scalar.Text,
            ScalarNode scalar => Plain(scalar.Text),
            _ => throw new InvalidOperationException("A refused value has no meaning."),
        };

    /// <summary>
    /// Text without quotation marks, as the core schema resolves it; no word of the language is a fraction.
    /// </summary>
    private static JsonNode Plain(string text) =>
        text is "true" or "false" ? text == "true"
        : WholeNumber().IsMatch(text) ? int.Parse(text, CultureInfo.InvariantCulture)
        : text;

    [GeneratedRegex(@"\A[-+]?[0-9]{1,9}\z", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex WholeNumber();
}
