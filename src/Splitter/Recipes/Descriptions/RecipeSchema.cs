using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Splitter.Recipes.Keys;
using Splitter.Recipes.Language;

namespace Splitter.Recipes.Descriptions;

/// <summary>
/// The language for editors, as JSON Schema 2020-12. It knows keys, forms, units and words; ranges of lengths, and what
/// keys ask of each other, the reader alone judges.
/// </summary>
internal static class RecipeSchema
{
    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        // The file is read as JSON alone, never inside a web page: letters stay readable.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    internal static string Write()
    {
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "Splitter recipe",
            ["description"] = $"A recipe of Splitter, version {RecipeKeys.Version} of the language.",
        };
        var group = RecipeKeys.Group.ToSchema();
        foreach (var (name, value) in group.ToArray())
        {
            group.Remove(name);
            schema[name] = value;
        }
        // What may stand in an included file instead is missed only where there is none.
        schema["required"] = Required(k => k.Kind.Keys.Any(inner => inner.IsOwn) || k == RecipeKeys.Splitter);
        schema["anyOf"] = new JsonArray(
            new JsonObject { ["required"] = new JsonArray(RecipeKeys.Include.Name) },
            new JsonObject { ["required"] = Required(_ => true) }
        );
        return schema.ToJsonString(Options) + "\n";
    }

    private static JsonArray Required(Func<Key, bool> asked) =>
        [.. RecipeKeys.Group.Keys.Where(k => k.Required && asked(k)).Select(k => (JsonNode)k.Name)];
}
