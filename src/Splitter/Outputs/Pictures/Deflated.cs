using ICSharpCode.SharpZipLib.Checksum;
using ICSharpCode.SharpZipLib.Zip.Compression;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// Bytes compressed (RFC 1950 and 1951). The compressor is managed code that a system cannot exchange: .NET's own gives
/// other bytes with another zlib. What repeats is found by <see cref="Repeats"/>, which on pictures takes half the time
/// that the library takes for it.
/// </summary>
internal static class Deflated
{
    /// <summary>Deflate with a window of 32 kB, and no dictionary (RFC 1950, 2.2).</summary>
    private const int Header = 0x789c;

    /// <summary>
    /// Literals and repeats with codes of their own. At 48 bits each at most they fit into the library's buffer, which
    /// takes 64 kB.
    /// </summary>
    private const int MostOfBlock = 10_000;

    internal static byte[] Of(byte[] data, RepeatSearch search) => Of(data, data.Length, search);

    /// <param name="length">Bytes of the data that count.</param>
    internal static byte[] Of(byte[] data, int length, RepeatSearch search)
    {
        var pending = new DeflaterPending();
        var codes = new DeflaterHuffman(pending);
        var compressed = new TextBytes(TextBytes.Long);
        var buffer = new byte[1 << 16];
        pending.WriteShortMSB(Header);
        using var repeats = new Repeats(data, length, search);
        var (first, next, count) = (0, 0, 0);
        while (next < length)
        {
            var (same, distance) = repeats.Next();
            if (distance == 0)
                codes.TallyLit(data[next]);
            else
                codes.TallyDist(distance, same);
            next += same;
            if (++count == MostOfBlock)
            {
                EndBlock(isLast: false);
                (first, count) = (next, 0);
            }
        }
        EndBlock(isLast: true);
        pending.AlignToByte();
        var sum = new Adler32();
        sum.Update(new ArraySegment<byte>(data, 0, length));
        pending.WriteShortMSB((int)(sum.Value >> 16));
        pending.WriteShortMSB((int)(sum.Value & 0xffff));
        compressed.Add(Flushed());
        return compressed.ToArray();

        void EndBlock(bool isLast)
        {
            codes.FlushBlock(data, first, next - first, isLast);
            compressed.Add(Flushed());
        }

        ReadOnlySpan<byte> Flushed() => buffer.AsSpan(0, pending.Flush(buffer, 0, buffer.Length));
    }
}
