using System.Drawing;
using System.Globalization;

namespace Splitter.Artwork.Svg;

/// <summary>A colour as written: <c>#rrggbb</c> and how opaque it is, 0 to 1.</summary>
internal readonly record struct Colour(string Hex, double Alpha);

/// <summary>Colours of CSS Color level 3, and level 4's writing of them.</summary>
internal static class Colours
{
    /// <returns>Null when it is no colour.</returns>
    internal static Colour? Read(string text)
    {
        var value = text.Trim().ToLowerInvariant();
        if (value == "transparent")
            return new("#000000", 0);
        // What follows a name or digits, such as icc-color(), is for printers.
        if (value.StartsWith('#'))
            return Hex(value[1..].Split(' ', 2)[0]);
        var bracket = value.IndexOf('(', StringComparison.Ordinal);
        if (bracket > 0)
            return value.IndexOf(')', bracket) is var end && end > 0
                ? Function(value[..bracket].TrimEnd(), value[(bracket + 1)..end])
                : null;
        return Named(value.Split(' ', 2)[0]);
    }

    private static Colour? Named(string name)
    {
        // .NET has the names of CSS with their values, but only the American spelling of grey.
        var color = Color.FromName(name.Replace("grey", "gray", StringComparison.Ordinal));
        return color.IsKnownColor && !color.IsSystemColor ? Of(color.R, color.G, color.B, 1) : null;
    }

    private static Colour? Hex(string digits)
    {
        if (digits.Length is not (3 or 4 or 6 or 8) || !digits.All(char.IsAsciiHexDigit))
            return null;
        if (digits.Length <= 4)
            digits = string.Concat(digits.Select(d => $"{d}{d}"));
        var alpha =
            digits.Length == 8 ? int.Parse(digits[6..], NumberStyles.HexNumber, CultureInfo.InvariantCulture) : 255;
        return new("#" + digits[..6], alpha / 255.0);
    }

    private static Colour? Function(string name, string arguments)
    {
        string[] parts = arguments.Split([' ', ',', '/', '\t', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length is not (3 or 4))
            return null;
        var alpha = parts.Length == 4 ? Number(parts[3], 1) : 1;
        return (name, alpha) switch
        {
            ("rgb" or "rgba", { } a)
                when Number(parts[0], 255) is { } r
                    && Number(parts[1], 255) is { } g
                    && Number(parts[2], 255) is { } b => Of(r, g, b, a),
            ("hsl" or "hsla", { } a)
                when Number(parts[0].Replace("deg", "", StringComparison.Ordinal), 360) is { } h
                    && parts[1].EndsWith('%')
                    && parts[2].EndsWith('%')
                    && Number(parts[1], 1) is { } s
                    && Number(parts[2], 1) is { } l => Hsl(h, Math.Clamp(s, 0, 1), Math.Clamp(l, 0, 1), a),
            _ => null,
        };
    }

    private static double? Number(string text, double whole) => Lengths.Read(text, whole);

    /// <summary>CSS Color level 3, 4.2.4: each channel is a trapezium over the hue.</summary>
    private static Colour Hsl(double hue, double saturation, double lightness, double alpha)
    {
        return Of(255 * Channel(0), 255 * Channel(8), 255 * Channel(4), alpha);

        double Channel(double n)
        {
            var k = (((n + (hue / 30)) % 12) + 12) % 12;
            return lightness
                - (saturation * Math.Min(lightness, 1 - lightness) * Math.Clamp(Math.Min(k - 3, 9 - k), -1, 1));
        }
    }

    private static Colour Of(double r, double g, double b, double alpha) =>
        new($"#{Byte(r):x2}{Byte(g):x2}{Byte(b):x2}", Math.Clamp(alpha, 0, 1));

    private static int Byte(double channel) =>
        (int)Math.Round(Math.Clamp(channel, 0, 255), MidpointRounding.AwayFromZero);
}
