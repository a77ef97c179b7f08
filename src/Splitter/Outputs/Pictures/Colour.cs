using System.Globalization;
using System.Runtime.InteropServices;

namespace Splitter.Outputs.Pictures;

/// <summary>A colour of a picture, sRGB; four bytes, which are copied at once.</summary>
[StructLayout(LayoutKind.Sequential, Size = 4)]
internal readonly record struct Colour(byte Red, byte Green, byte Blue)
{
    internal static readonly Colour White = new(255, 255, 255);
    internal static readonly Colour Ink = new(0x22, 0x2b, 0x33);

    /// <summary>From <c>#rrggbb</c>, as recipes and drawings hold every colour.</summary>
    internal static Colour Of(string text)
    {
        var value = int.Parse(text.AsSpan(1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);
        return new((byte)(value >> 16), (byte)(value >> 8), (byte)value);
    }

    /// <summary>A mixture, the other colour's share in percent.</summary>
    internal Colour Mixed(Colour other, int percent) =>
        new(Mix(Red, other.Red, percent), Mix(Green, other.Green, percent), Mix(Blue, other.Blue, percent));

    public override string ToString() => $"#{Red:x2}{Green:x2}{Blue:x2}";

    private static byte Mix(byte one, byte other, int percent) =>
        (byte)(((one * (100 - percent)) + (other * percent) + 50) / 100);
}
