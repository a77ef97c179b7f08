using System.Buffers;
using System.Buffers.Text;
using System.Text;

namespace Splitter.Outputs;

/// <summary>Text as UTF-8 while it is written: a million stitches never stand in memory as a string first.</summary>
/// <param name="room">Bytes to begin with: a page has thousands of short texts.</param>
internal sealed class TextBytes(int room = 1 << 8)
{
    /// <summary>Characters of the longest whole number.</summary>
    private const int LongestNumber = 11;

    /// <summary>Bytes to begin with where all stitches of a part follow.</summary>
    internal const int Long = 1 << 16;

    private readonly ArrayBufferWriter<byte> bytes = new(room);

    internal byte[] ToArray() => bytes.WrittenSpan.ToArray();

    internal TextBytes Add(ReadOnlySpan<byte> utf8)
    {
        bytes.Write(utf8);
        return this;
    }

    internal TextBytes Add(string text)
    {
        Encoding.UTF8.GetBytes(text, bytes);
        return this;
    }

    internal TextBytes Add(char ascii)
    {
        bytes.GetSpan(1)[0] = (byte)ascii;
        bytes.Advance(1);
        return this;
    }

    internal TextBytes Add(int number)
    {
        Utf8Formatter.TryFormat(number, bytes.GetSpan(LongestNumber), out var length);
        bytes.Advance(length);
        return this;
    }

    /// <summary>A number of tenths with its decimal, such as -0.5 or 12.0.</summary>
    internal TextBytes AddTenths(int tenths)
    {
        if (tenths < 0)
            Add('-');
        var (whole, part) = Math.DivRem(Math.Abs(tenths), 10);
        return Add(whole).Add('.').Add((char)('0' + part));
    }

    /// <summary>A number of tenths as short as it can be, such as -.5 or 12.</summary>
    internal TextBytes AddShortTenths(int tenths)
    {
        if (tenths < 0)
            Add('-');
        var (whole, part) = Math.DivRem(Math.Abs(tenths), 10);
        if (whole > 0 || part == 0)
            Add(whole);
        return part > 0 ? Add('.').Add((char)('0' + part)) : this;
    }
}
