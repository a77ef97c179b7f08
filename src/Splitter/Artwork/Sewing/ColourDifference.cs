using System.Globalization;

namespace Splitter.Artwork.Sewing;

/// <summary>
/// How unlike two colours look: the distance of CIE 1976 (dE*ab) in CIELAB under D65. From sRGB by IEC 61966-2-1, on to
/// CIELAB by ISO/CIE 11664-4; figures of both from memory.
/// </summary>
internal static class ColourDifference
{
    /// <summary>The white of D65, as sRGB's primaries add up to it.</summary>
    private const double WhiteX = 0.9505,
        WhiteZ = 1.089;

    /// <summary>Below this a channel is linear, and above it a power.</summary>
    private const double LinearChannel = 0.04045;

    /// <summary>Newton's steps to a root: sixty bring a thousandth's fifth root to the last bit.</summary>
    private const int Steps = 60;

    /// <summary>Where the cube root of CIELAB gives way to a line: 6/29 cubed, and 3 times 6/29 squared.</summary>
    private const double LinearLight = 216.0 / 24_389,
        Slope = 108.0 / 841;

    /// <param name="one"><c>#rrggbb</c>.</param>
    /// <param name="other"><c>#rrggbb</c>.</param>
    internal static double Between(string one, string other)
    {
        var (a, b) = (Lab(one), Lab(other));
        var (l, green, blue) = (a.L - b.L, a.A - b.A, a.B - b.B);
        return Math.Sqrt((l * l) + (green * green) + (blue * blue));
    }

    /// <summary>L* from 0 to 100; a* from green to red, b* from blue to yellow.</summary>
    internal static (double L, double A, double B) Lab(string colour)
    {
        var (r, g, b) = (Channel(colour, 0), Channel(colour, 1), Channel(colour, 2));
        var x = Response(((0.4124 * r) + (0.3576 * g) + (0.1805 * b)) / WhiteX);
        var y = Response((0.2126 * r) + (0.7152 * g) + (0.0722 * b));
        var z = Response(((0.0193 * r) + (0.1192 * g) + (0.9505 * b)) / WhiteZ);
        return ((116 * y) - 16, 500 * (x - y), 200 * (y - z));
    }

    private static double Channel(string colour, int channel)
    {
        var value =
            byte.Parse(colour.AsSpan(1 + (2 * channel), 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture)
            / (double)byte.MaxValue;
        if (value <= LinearChannel)
            return value / 12.92;
        // To the power of 2.4, which is 2 and two fifths.
        var light = (value + 0.055) / 1.055;
        return light * light * Root(light * light, 5);
    }

    private static double Response(double light) => light > LinearLight ? Root(light, 3) : (light / Slope) + (4.0 / 29);

    /// <summary>By multiplying alone, which has the same last bits everywhere.</summary>
    private static double Root(double value, int degree)
    {
        var root = 1.0;
        for (var i = 0; i < Steps; i++)
        {
            var power = root;
            for (var k = 2; k < degree; k++)
                power *= root;
            root = (((degree - 1) * root) + (value / power)) / degree;
        }
        return root;
    }
}
