using Splitter.Diagnostics;

namespace Splitter.Recipes.Yaml;

/// <summary>The parser's complaint, with advice for the slips that people make in recipes.</summary>
internal static class YamlSyntax
{
    internal static Diagnostic Explain(Place place, string complaint, string text)
    {
        var what = complaint.TrimEnd('.');
        what = char.ToLowerInvariant(what[0]) + what[1..];
        bool Says(string words) => what.Contains(words, StringComparison.OrdinalIgnoreCase);

        if (Says("tab"))
            return RecipeProblems.NotYaml(FirstTab(place, text), what, "indent with spaces, never with tabs");
        var advice =
            Says("multi-line double-quoted") || Says("unexpected end of stream") ? "close the quotation mark"
            : Says("invalid mapping") || Says("mapping values")
                ? "indent keys of one level alike, and put text that holds ': ' in quotation marks"
            : Says("cannot start any token") ? "put a value that begins with this character in quotation marks"
            : Says("block scalar") ? "put a value that begins with '>' or '|' in quotation marks"
            : "look at this line and the one before it";
        return RecipeProblems.NotYaml(place, what, advice);
    }

    /// <summary>The parser points at the start of what the tab spoils; the tab itself is more useful.</summary>
    private static Place FirstTab(Place place, string text)
    {
        var lines = text.Split('\n');
        for (var i = Math.Max(0, place.Line - 1); i < lines.Length; i++)
        {
            var indent = lines[i].AsSpan(0, lines[i].Length - lines[i].AsSpan().TrimStart(" \t").Length);
            if (indent.IndexOf('\t') is >= 0 and var column)
                return place with { Line = i + 1, Column = column + 1 };
        }
        return place;
    }
}
