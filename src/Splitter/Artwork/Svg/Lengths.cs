namespace Splitter.Artwork.Svg;

/// <summary>
/// Lengths with CSS units, in user units (CSS pixels): 1 in = 96 px = 72 pt = 6 pc = 2.54 cm (CSS Values).
/// </summary>
internal static class Lengths
{
    /// <summary>Micrometres in a CSS pixel, 1/96 in.</summary>
    internal const double Pixel = 25_400.0 / 96;

    /// <summary>Font sizes are not followed, since text is not sewn: an em is a browser's usual 16 px.</summary>
    private const double Em = 16;

    /// <param name="whole">What 100 % is, user units; NaN where a percentage says nothing.</param>
    /// <returns>Null when it is no length.</returns>
    internal static double? Read(string text, double whole)
    {
        var scanner = new Scanner(text);
        scanner.SkipSpace();
        var length = Take(scanner, whole);
        scanner.SkipSpace();
        return scanner.AtEnd ? length : null;
    }

    /// <summary>Lengths parted by spaces or commas; null when one of them is none.</summary>
    internal static List<double>? ReadList(string text, double whole)
    {
        var scanner = new Scanner(text);
        var lengths = new List<double>();
        scanner.SkipSpace();
        while (!scanner.AtEnd)
        {
            if (Take(scanner, whole) is not { } length)
                return null;
            lengths.Add(length);
            scanner.SkipSeparator();
        }
        return lengths;
    }

    private static double? Take(Scanner scanner, double whole)
    {
        if (!scanner.TryNumber(out var number))
            return null;
        double? unit = scanner.Word().ToLowerInvariant() switch
        {
            "" or "px" => 1,
            "mm" => 96 / 25.4,
            "cm" => 96 / 2.54,
            "q" => 96 / 101.6,
            "in" => 96,
            "pt" => 96 / 72.0,
            "pc" => 16,
            "em" or "rem" => Em,
            "ex" or "ch" => Em / 2,
            "%" => whole / 100,
            _ => null,
        };
        return unit is { } per && double.IsFinite(number * per) ? number * per : null;
    }
}
