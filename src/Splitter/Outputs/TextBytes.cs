using System.Buffers;
using System.Buffers.Text;
using System.Text;

namespace Splitter.Outputs;

/// <summary>
/// Text as UTF-8 while it is written: a million stitches never stand in memory as a string first, and what is written
/// is copied only when all of it is there.
/// </summary>
/// <param name="room">Bytes to begin with: a page has thousands of short texts.</param>
internal sealed class TextBytes(int room = 1 << 8)
{
    /// <summary>Characters of the longest whole number.</summary>
    private const int LongestNumber = 11;

    /// <summary>Bytes to begin with where all stitches of a part follow.</summary>
    internal const int Long = 1 << 16;

    /// <summary>
    /// Pieces grow up to here: those of a long text serve the next one, however long that is, and little stays idle.
    /// </summary>
    private const int LargestPiece = 1 << 20;

    /// <summary>What is full, in turn.</summary>
    private readonly List<(byte[] Bytes, int Count)> pieces = [];

    /// <summary>Rented: what is done with serves the next page instead of waiting for the collector.</summary>
    private byte[] bytes = ArrayPool<byte>.Shared.Rent(room);

    private int count;

    /// <summary>All of it; the next text begins anew.</summary>
    internal byte[] ToArray()
    {
        pieces.Add((bytes, count));
        var all = GC.AllocateUninitializedArray<byte>(pieces.Sum(p => p.Count));
        var left = all.AsSpan();
        foreach (var (piece, length) in pieces)
        {
            piece.AsSpan(0, length).CopyTo(left);
            left = left[length..];
            ArrayPool<byte>.Shared.Return(piece);
        }
        pieces.Clear();
        (bytes, count) = ([], 0);
        return all;
    }

    internal TextBytes Add(ReadOnlySpan<byte> utf8)
    {
        utf8.CopyTo(Room(utf8.Length));
        count += utf8.Length;
        return this;
    }

    internal TextBytes Add(string text)
    {
        // Room may begin another piece, and count anew.
        var length = Encoding.UTF8.GetBytes(text, Room(Encoding.UTF8.GetMaxByteCount(text.Length)));
        count += length;
        return this;
    }

    internal TextBytes Add(char ascii)
    {
        Room(1)[0] = (byte)ascii;
        count++;
        return this;
    }

    internal TextBytes Add(int number)
    {
        Utf8Formatter.TryFormat(number, Room(LongestNumber), out var length);
        count += length;
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

    /// <summary>Where so many bytes more can be written.</summary>
    private Span<byte> Room(int more)
    {
        if (bytes.Length - count < more)
        {
            pieces.Add((bytes, count));
            var size = Math.Clamp(2 * bytes.Length, room, LargestPiece);
            (bytes, count) = (ArrayPool<byte>.Shared.Rent(Math.Max(size, more)), 0);
        }
        return bytes.AsSpan(count);
    }
}
