using System.Text.RegularExpressions;
using Splitter.Diagnostics;

namespace Splitter.Recipes.Yaml;

/// <summary>The parser's complaint, with advice for the slips that people make in recipes.</summary>
internal static partial class YamlSyntax
{
    internal static Diagnostic Explain(Place place, string complaint, string text)
    {
        var what = complaint.TrimEnd('.');
        what = char.ToLowerInvariant(what[0]) + what[1..];
        bool Says(string words) => what.Contains(words, StringComparison.OrdinalIgnoreCase);

        if (Says("tab"))
            return RecipeFileProblems.NotYaml(FirstTab(place, text), what, "indent with spaces, never with tabs");
        if (ColourLeftOut(place, text) is { } colour)
            return BareColourAt(colour);
        var advice =
            Says("multi-line double-quoted") || Says("unexpected end of stream") ? "close the quotation mark"
            : Says("invalid mapping") || Says("mapping values")
                ? "indent keys of one level alike, and put text that holds ': ' in quotation marks"
            : Says("cannot start any token") ? "put a value that begins with this character in quotation marks"
            : Says("block scalar") ? "put a value that begins with '>' or '|' in quotation marks"
            : "look at this line and the one before it";
        return RecipeFileProblems.NotYaml(place, what, advice);
    }

    /// <summary>A bracket or a brace without its partner: the rest of its line may have become a comment.</summary>
    internal static Diagnostic NotClosed(Place place, string text) =>
        ColourLeftOut(place, text) is { } colour ? BareColourAt(colour) : RecipeFileProblems.NotClosed(place);

    private static Diagnostic BareColourAt(Place place) =>
        RecipeFileProblems.NotYaml(
            place,
            "a '#' after a space begins a comment, so the value is missing",
            "put the colour in quotation marks, as in \"#336699\""
        );

    /// <summary>
    /// A colour without quotation marks, on the line that the parser stumbled over or the one before it.
    /// </summary>
    private static Place? ColourLeftOut(Place place, string text)
    {
        var lines = text.Split('\n');
        for (var i = Math.Min(place.Line, lines.Length) - 1; i >= Math.Max(0, place.Line - 2); i--)
            if (BareColour().Match(lines[i]) is { Success: true } found)
                return place with { Line = i + 1, Column = found.Groups["colour"].Index + 1 };
        return null;
    }

    [GeneratedRegex(@"^[^""'#]*[:,\[]\s+(?<colour>#[0-9A-Fa-f]{3,8})\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex BareColour();

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
