using System.Globalization;
using Splitter.Recipes.Language;

namespace Splitter.Artwork.Sewing;

/// <summary>Which colour is probably meant by another.</summary>
internal static class NearColour
{
    /// <summary>
    /// Colours that differ by no more in any channel, of 255, look alike but side by side. Common practice, no source.
    /// </summary>
    private const int Alike = 12;

    /// <summary>One slip of the pen: a digit changed, or two neighbours swapped.</summary>
    private const int Slip = 1;

    /// <summary>The colour that is one slip away, or else the most alike; null when none is near.</summary>
    /// <param name="colour"><c>#rrggbb</c>, lower case, as all others.</param>
    internal static string? Of(string colour, IEnumerable<string> others) =>
        others
            .Select(other => (Colour: other, Slips: Words.Distance(colour, other), Apart: Apart(colour, other)))
            .Where(other => other.Slips <= Slip || other.Apart <= Alike)
            .OrderBy(other => other.Slips > Slip)
            .ThenBy(other => other.Apart)
            .Select(other => other.Colour)
            .FirstOrDefault();

    /// <summary>The largest difference in a channel.</summary>
    private static int Apart(string one, string other) =>
        Enumerable.Range(0, 3).Max(channel => Math.Abs(Channel(one, channel) - Channel(other, channel)));

    private static int Channel(string colour, int channel) =>
        byte.Parse(colour.AsSpan(1 + (2 * channel), 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
}
