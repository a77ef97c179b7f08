using System.Text;

namespace Splitter.Recipes.Yaml;

/// <summary>Text as a recipe writes it.</summary>
internal static class YamlText
{
    /// <summary>No recipe takes a longer name.</summary>
    private const int LongestName = 200;

    /// <summary>A name that a recipe can have: on one line, without codes that control something.</summary>
    internal static bool IsPlain(string name) =>
        name.Length is >= 1 and <= LongestName
        && name.Trim(' ') == name
        && name.EnumerateRunes().All(rune => !Rune.IsControl(rune) && rune.Value is < 0xFFFD or > 0xFFFF);

    /// <summary>In double quotation marks (YAML 1.2.2, section 7.3.1).</summary>
    internal static string Quoted(string text) =>
        $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
}
