using Splitter.Outputs.Pictures;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// How far colours stand out from each other (relative luminance and contrast of WCAG 2.1, from memory).
/// </summary>
internal static class Contrast
{
    /// <summary>
    /// The luminance that stands out as much from black as from white: 1.05 / (l + 0.05) = (l + 0.05) / 0.05.
    /// </summary>
    internal const double Middle = 0.179;

    private const double Flare = 0.05;

    /// <summary>From 1, alike, to 21, black on white.</summary>
    internal static double Of(string one, string other)
    {
        var (a, b) = (Luminance(one) + Flare, Luminance(other) + Flare);
        return Math.Max(a, b) / Math.Min(a, b);
    }

    internal static double Luminance(string colour)
    {
        var of = Colour.Of(colour);
        return (0.2126 * Linear(of.Red)) + (0.7152 * Linear(of.Green)) + (0.0722 * Linear(of.Blue));
    }

    /// <summary>
    /// The linear value of an sRGB channel by a cubic that stays within 0.002 of the standard's curve: a power would be
    /// rounded differently from machine to machine.
    /// </summary>
    private static double Linear(byte channel)
    {
        var c = channel / 255.0;
        return c * ((c * ((c * 0.305306011) + 0.682171111)) + 0.012522878);
    }
}
