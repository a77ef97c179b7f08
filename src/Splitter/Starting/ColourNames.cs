using System.Collections.Immutable;
using System.Globalization;

namespace Splitter.Starting;

/// <summary>
/// Plain names for colours, as one would ask for a spool: <c>dark blue</c>. Bounds between them: by eye, no source.
/// </summary>
internal static class ColourNames
{
    /// <summary>Least saturation of what is not called grey.</summary>
    private const double LeastColourful = 0.12;

    /// <summary>Where on the colour circle, in degrees, a name ends.</summary>
    private static readonly ImmutableArray<(double To, string Name)> Hues =
    [
        (14, "red"),
        (42, "orange"),
        (68, "yellow"),
        (165, "green"),
        (195, "teal"),
        (255, "blue"),
        (290, "violet"),
        (345, "pink"),
        (360, "red"),
    ];

    /// <summary>One name for each, in their order; colours of one name are numbered.</summary>
    internal static ImmutableArray<string> Of(ImmutableArray<string> colours)
    {
        var count = new Dictionary<string, int>(StringComparer.Ordinal);
        var names = ImmutableArray.CreateBuilder<string>();
        foreach (var name in colours.Select(Of))
        {
            count[name] = count.GetValueOrDefault(name) + 1;
            names.Add(count[name] == 1 ? name : string.Create(CultureInfo.InvariantCulture, $"{name} {count[name]}"));
        }
        return names.ToImmutable();
    }

    /// <param name="colour"><c>#rrggbb</c>.</param>
    internal static string Of(string colour)
    {
        var (hue, saturation, lightness) = HueSaturationLightness(colour);
        if (lightness < 0.06)
            return "black";
        if (lightness > 0.96)
            return "white";
        if (saturation < LeastColourful)
            return lightness < 0.35 ? "dark grey"
                : lightness > 0.7 ? "light grey"
                : "grey";
        var name = Hues.First(h => hue <= h.To).Name;
        return name switch
        {
            "orange" or "yellow" when lightness < 0.42 => lightness < 0.22 ? "dark brown" : "brown",
            "orange" when lightness > 0.8 => "cream",
            "orange" when saturation < 0.55 => lightness < 0.5 ? "brown" : "beige",
            "yellow" when lightness > 0.85 => "cream",
            _ => lightness < 0.3 ? $"dark {name}"
            : lightness > 0.7 ? $"light {name}"
            : name,
        };
    }

    /// <summary>CSS Color Module Level 4, section 7: how red, green and blue become HSL.</summary>
    private static (double Hue, double Saturation, double Lightness) HueSaturationLightness(string colour)
    {
        double Channel(int at) =>
            int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
        var (r, g, b) = (Channel(1), Channel(3), Channel(5));
        var (most, least) = (Math.Max(r, Math.Max(g, b)), Math.Min(r, Math.Min(g, b)));
        var (lightness, range) = ((most + least) / 2, most - least);
        if (range == 0)
            return (0, 0, lightness);
        var sixth =
            most == r ? ((g - b) / range) + (g < b ? 6 : 0)
            : most == g ? ((b - r) / range) + 2
            : ((r - g) / range) + 4;
        return (60 * sixth, range / (1 - Math.Abs((2 * lightness) - 1)), lightness);
    }
}
