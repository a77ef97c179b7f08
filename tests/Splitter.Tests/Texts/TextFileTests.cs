using System.Text.RegularExpressions;
using Splitter.Outputs.Sheets;
using Splitter.Recipes;
using Splitter.Texts;

namespace Splitter.Tests.Texts;

/// <summary>Every language says the same things, and says nothing that nobody asks for.</summary>
public sealed partial class TextFileTests
{
    private static readonly string[] Code =
    [
        .. new[] { "Parts", "Outputs", "Texts" }
            .SelectMany(folder =>
                Directory.EnumerateFiles(
                    Repository.Path("src", "Splitter", folder),
                    "*.cs",
                    SearchOption.AllDirectories
                )
            )
            .Order(StringComparer.Ordinal)
            .Select(File.ReadAllText),
    ];

    [Fact]
    public void EveryLanguageHasTheKeysAndPlaceholdersOfEnglish() =>
        Assert.All(Enum.GetValues<SheetLanguage>(), HasTheKeysAndPlaceholdersOfEnglish);

    private static void HasTheKeysAndPlaceholdersOfEnglish(SheetLanguage language)
    {
        var (english, other) = (TextFile.Of(SheetLanguage.English), TextFile.Of(language));
        Assert.Equal(english.Keys.Order(StringComparer.Ordinal), other.Keys.Order(StringComparer.Ordinal));
        Assert.All(english.Keys, key => Assert.Equal(Placeholders(english[key]), Placeholders(other[key])));
        // Code that says how many never gives a number to the form for one.
        Assert.All(
            other.Where(text => other.ContainsKey(text.Key.Replace(".one", ".many")) && text.Key.EndsWith(".one")),
            text => Assert.DoesNotContain("{count}", text.Value, StringComparison.Ordinal)
        );
        Assert.All(other.Values, text => Assert.Matches(@"\A\S(.*\S)?\z", text));
    }

    /// <summary>Texts are asked for by their whole name, so that one can look for it in the code.</summary>
    [Fact]
    public void EveryTextIsAskedFor()
    {
        var asked = Code.SelectMany(code => Literal().Matches(code)).Select(m => m.Groups["text"].Value).ToHashSet();
        // The page's script asks for its own without the beginning that they share.
        asked.UnionWith(Literal().Matches(PageFile.Read("watch.js")).Select(m => $"watch.{m.Groups["text"].Value}"));
        Assert.Empty(
            TextFile
                .Of(SheetLanguage.English)
                .Keys.Where(key => !asked.Contains(key) && !asked.Contains(Form().Replace(key, "")))
                .Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void EveryTextThatIsAskedForIsThere()
    {
        var said = Code.SelectMany(code => Said().Matches(code)).Select(m => m.Groups["key"].Value).ToList();
        Assert.NotEmpty(said);
        var texts = TextFile.Of(SheetLanguage.English);
        Assert.All(said, key => Assert.True(texts.ContainsKey(key) || texts.ContainsKey($"{key}.one"), key));
    }

    private static IEnumerable<string> Placeholders(string text) =>
        Placeholder().Matches(text).Select(m => m.Value).Distinct().Order(StringComparer.Ordinal);

    [GeneratedRegex("\\{[^}]*\\}", RegexOptions.None, 1000)]
    private static partial Regex Placeholder();

    [GeneratedRegex("\"(?<text>[a-z0-9.-]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Literal();

    [GeneratedRegex(@"\.(Say|Many)\(\s*""(?<key>[^""]+)""", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Said();

    /// <summary>Forms of one text for one and for many, which code need not name.</summary>
    [GeneratedRegex(@"\.(one|many)\z", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Form();
}
