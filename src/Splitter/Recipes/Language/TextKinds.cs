using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Splitter.Diagnostics;

namespace Splitter.Recipes.Language;

/// <summary>Text on one line.</summary>
internal sealed class TextKind(int most) : ScalarKind<string>
{
    internal override string Expects => $"text of 1 to {most} characters on one line";

    internal override JsonObject ToSchema()
    {
        var text = Schema.AnyText(@"[^\x00-\x1F]+");
        text["maxLength"] = most;
        return text;
    }

    internal override Maybe<string> ReadText(string text, Given given) =>
        text.Length >= 1 && text.Length <= most && text.EnumerateRunes().All(IsCharacter)
            ? text
            : given.RefuseForm(Expects);

    /// <summary>
    /// Anything that XML can hold: no control code, nor what stands for a broken or absent character.
    /// </summary>
    private static bool IsCharacter(Rune rune) => !Rune.IsControl(rune) && rune.Value is < 0xFFFD or > 0xFFFF;
}

/// <summary>One word of several.</summary>
internal sealed class WordKind<T>(ImmutableArray<(string Word, T Value)> words) : ScalarKind<T>
    where T : notnull
{
    internal ImmutableArray<string> Spellings => [.. words.Select(w => w.Word)];

    internal override string Expects => Words.List(Spellings, "or");

    internal override JsonObject ToSchema() => Schema.Words([.. Spellings]);

    internal override Maybe<T> ReadText(string text, Given given)
    {
        foreach (var (word, value) in words)
        {
            if (word == text)
                return value;
        }
        return given.Refuse(RecipeValueProblems.UnknownWord(given.Place, given.Key.Name, text, Spellings));
    }
}

/// <summary>A whole number.</summary>
internal sealed class CountKind(int least, int most) : ScalarKind<int>
{
    internal override string Expects =>
        least == most ? $"the number {least}" : $"a whole number from {least} to {most}";

    internal override JsonObject ToSchema() =>
        new()
        {
            ["type"] = "integer",
            ["minimum"] = least,
            ["maximum"] = most,
        };

    internal override Maybe<int> ReadText(string text, Given given) =>
        Quantity.TryParse(text, out var q) && q.Unit.Length == 0 && decimal.IsInteger(q.Number)
            ? q.Number >= least && q.Number <= most
                ? (int)q.Number
                : given.Refuse(RecipeValueProblems.OutOfRange(given.Place, given.Key.Name, text, $"{least}", $"{most}"))
            : given.RefuseForm(Expects);
}

/// <summary>A fraction between 0 and 1, as <c>3/8</c>.</summary>
/// <param name="most">Parts of the whole.</param>
internal sealed partial class FractionKind(int most) : ScalarKind<Stagger>
{
    internal override string Expects => $"a fraction from 1/{most} to {most - 1}/{most}";

    internal override JsonObject ToSchema() => Schema.Text("[0-9]{1,4} ?/ ?[0-9]{1,4}");

    internal override Maybe<Stagger> ReadText(string text, Given given)
    {
        if (Pattern().Match(text) is not { Success: true } match)
            return given.RefuseForm(Expects);
        var (part, whole) = (Number("part"), Number("whole"));
        return part >= 1 && part < whole && whole <= most
            ? new Stagger(part, whole)
            : given.Refuse(
                RecipeValueProblems.OutOfRange(given.Place, given.Key.Name, text, $"1/{most}", $"{most - 1}/{most}")
            );

        int Number(string group) => int.Parse(match.Groups[group].ValueSpan, CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(
        @"\A(?<part>[0-9]{1,4}) ?/ ?(?<whole>[0-9]{1,4})\z",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Pattern();
}

/// <summary>A colour as CSS writes it in hexadecimal; <c>#rrggbb</c>, lower case.</summary>
internal sealed partial class ColourKind : ScalarKind<string>
{
    internal override string Expects =>
        "a colour as \"#rgb\" or \"#rrggbb\" in quotation marks (an open # begins a comment)";

    internal override JsonObject ToSchema() => Schema.Text("#([0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})");

    internal override Maybe<string> ReadText(string text, Given given)
    {
        if (!Pattern().IsMatch(text))
            return given.RefuseForm(Expects);
        var hex = text[1..].ToLowerInvariant();
        return "#" + (hex.Length == 6 ? hex : string.Concat(hex.Select(c => new string(c, 2))));
    }

    [GeneratedRegex(
        @"\A#([0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})\z",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Pattern();
}
