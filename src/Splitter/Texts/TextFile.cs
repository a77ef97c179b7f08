using System.Collections.Frozen;
using System.Text.Json;
using Splitter.Recipes;

namespace Splitter.Texts;

/// <summary>
/// Every text of one language by its key: a JSON object with comments in this folder. Another language is another file.
/// </summary>
internal static class TextFile
{
    private static readonly JsonDocumentOptions Options = new() { CommentHandling = JsonCommentHandling.Skip };

    private static readonly FrozenDictionary<SheetLanguage, Lazy<FrozenDictionary<string, string>>> All =
        Enum.GetValues<SheetLanguage>()
            .ToFrozenDictionary(
                language => language,
                language => new Lazy<FrozenDictionary<string, string>>(() => Read(CodeOf(language)))
            );

    internal static FrozenDictionary<string, string> Of(SheetLanguage language) => All[language].Value;

    /// <summary>Of BCP 47, as recipes and pages write it.</summary>
    internal static string CodeOf(SheetLanguage language) => language == SheetLanguage.German ? "de" : "en";

    private static FrozenDictionary<string, string> Read(string code)
    {
        using var stream =
            typeof(TextFile).Assembly.GetManifestResourceStream($"texts.{code}.json")
            ?? throw new InvalidOperationException($"The texts in {code} are not in this build.");
        using var json = JsonDocument.Parse(stream, Options);
        return json
            .RootElement.EnumerateObject()
            .ToFrozenDictionary(p => p.Name, p => p.Value.GetString()!, StringComparer.Ordinal);
    }
}
