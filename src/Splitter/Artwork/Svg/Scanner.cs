using System.Globalization;

namespace Splitter.Artwork.Svg;

/// <summary>
/// Reads numbers, flags and words off a text as SVG's grammars have them: separators only where needed.
/// </summary>
internal sealed class Scanner(string text)
{
    internal int Position { get; private set; }

    internal bool AtEnd => Position >= text.Length;

    /// <summary>The next character, NUL at the end.</summary>
    internal char Next => AtEnd ? '\0' : text[Position];

    internal void Skip() => Position++;

    internal void SkipSpace()
    {
        while (Next is ' ' or '\t' or '\r' or '\n' or '\f')
            Position++;
    }

    /// <summary>Spaces with at most one comma among them; true when there was a comma.</summary>
    internal bool SkipSeparator()
    {
        SkipSpace();
        if (Next != ',')
            return false;
        Position++;
        SkipSpace();
        return true;
    }

    internal bool TryTake(char expected)
    {
        if (Next != expected)
            return false;
        Position++;
        return true;
    }

    /// <summary>A number here, without space before it. One that is no finite double is no number.</summary>
    internal bool TryNumber(out double number)
    {
        var at = Position;
        if (At(at) is '+' or '-')
            at++;
        var digits = Digits(ref at);
        if (At(at) == '.')
        {
            at++;
            digits += Digits(ref at);
        }
        number = 0;
        if (digits == 0)
            return false;
        if (At(at) is 'e' or 'E')
        {
            var exponent = at + 1;
            if (At(exponent) is '+' or '-')
                exponent++;
            // "1em" is a length, not an exponent.
            if (Digits(ref exponent) > 0)
                at = exponent;
        }
        number = double.Parse(text.AsSpan(Position, at - Position), NumberStyles.Float, CultureInfo.InvariantCulture);
        if (!double.IsFinite(number))
            return false;
        Position = at;
        return true;
    }

    /// <summary>An arc's flag: one character, which the next number may follow at once.</summary>
    internal bool TryFlag(out bool flag)
    {
        flag = Next == '1';
        if (Next is not ('0' or '1'))
            return false;
        Position++;
        return true;
    }

    /// <summary>Letters, digits, hyphens and percent signs; empty when there are none.</summary>
    internal string Word()
    {
        var start = Position;
        while (char.IsAsciiLetterOrDigit(Next) || Next is '-' or '_' or '%')
            Position++;
        return text[start..Position];
    }

    private char At(int position) => position < text.Length ? text[position] : '\0';

    private int Digits(ref int at)
    {
        var start = at;
        while (char.IsAsciiDigit(At(at)))
            at++;
        return at - start;
    }
}
