using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;
using Splitter.Diagnostics;

namespace Splitter.Recipes.Language;

/// <summary>Text on one line.</summary>
internal sealed class TextKind(int most) : ScalarKind<string>
{
    internal override string Expects => $"text of 1 to {most} characters on one line";

    internal override Maybe<string> ReadText(string text, Given given) =>
        text.Length >= 1 && text.Length <= most && text.EnumerateRunes().All(IsCharacter)
            ? text
            : given.RefuseForm(Expects);

    /// <summary>Anything that XML can hold: no control code, nor what stands for a broken or absent character.</summary>
    private static bool IsCharacter(Rune rune) => !Rune.IsControl(rune) && rune.Value is < 0xFFFD or > 0xFFFF;
}

/// <summary>One word of several.</summary>
internal sealed class WordKind<T>(ImmutableArray<(string Word, T Value)> words) : ScalarKind<T>
    where T : notnull
{
    internal ImmutableArray<string> Spellings => [.. words.Select(w => w.Word)];

    internal override string Expects => Words.List(Spellings, "or");

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

    internal override Maybe<int> ReadText(string text, Given given) =>
        Quantity.TryParse(text, out var q) && q.Unit.Length == 0 && decimal.IsInteger(q.Number)
            ? q.Number >= least && q.Number <= most
                ? (int)q.Number
                : given.Refuse(RecipeValueProblems.OutOfRange(given.Place, given.Key.Name, text, $"{least}", $"{most}"))
            : given.RefuseForm(Expects);
}

/// <summary>A colour as CSS writes it in hexadecimal; <c>#rrggbb</c>, lower case.</summary>
internal sealed partial class ColourKind : ScalarKind<string>
{
    internal override string Expects =>
        "a colour as \"#rgb\" or \"#rrggbb\" in quotation marks (an open # begins a comment)";

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
