using System.Globalization;
using System.Text.RegularExpressions;

namespace Splitter.Recipes.Language;

/// <summary>A number with what follows it: a unit or nothing.</summary>
internal readonly partial record struct Quantity(decimal Number, string Unit)
{
    /// <summary>Longer text is no quantity; it bounds the work on hostile input.</summary>
    private const int MostCharacters = 40;

    /// <summary>A number as a pattern.</summary>
    internal const string Written = "[+-]?[0-9]{1,9}([.][0-9]{1,9})?";

    /// <summary>
    /// Plain digits with a point: no exponent, no thousands, nothing that a culture could read otherwise.
    /// </summary>
    internal static bool TryParse(string text, out Quantity quantity)
    {
        quantity = default;
        if (text.Length > MostCharacters || Pattern().Match(text) is not { Success: true } match)
            return false;
        quantity = new(
            decimal.Parse(match.Groups["number"].ValueSpan, NumberStyles.Number, CultureInfo.InvariantCulture),
            match.Groups["unit"].Value
        );
        return true;
    }

    /// <summary>With a decimal point, if the text is a quantity but for a comma.</summary>
    internal static string WithPoint(string text) =>
        text.Count(c => c == ',') == 1 && text.Replace(',', '.') is var plain && TryParse(plain, out _) ? plain : text;

    [GeneratedRegex(
        @"\A(?<number>[+-]?[0-9]{1,9}(\.[0-9]{1,9})?) *(?<unit>[A-Za-z%]*)\z",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Pattern();
}
