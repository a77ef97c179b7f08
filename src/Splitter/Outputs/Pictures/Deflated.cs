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

    /// <summary>Earlier places to look at where repetition is what there is: flat colours, or text.</summary>
    internal const int Thorough = 1024;

    /// <summary>
    /// Literals and repeats with codes of their own. At 48 bits each at most they fit into the library's buffer, which
    /// takes 64 kB.
    /// </summary>
    private const int MostOfBlock = 10_000;

    /// <param name="effort">At how many earlier places to look for the longest repeat.</param>
    internal static byte[] Of(byte[] data, int effort)
    {
        var pending = new DeflaterPending();
        var codes = new DeflaterHuffman(pending);
        using var compressed = new MemoryStream();
        var buffer = new byte[1 << 16];
        pending.WriteShortMSB(Header);
        var (first, next, count) = (0, 0, 0);
        foreach (var (length, distance) in Repeats.Of(data, effort))
        {
            if (distance == 0)
                codes.TallyLit(data[next]);
            else
                codes.TallyDist(distance, length);
            next += length;
            if (++count == MostOfBlock)
            {
                EndBlock(isLast: false);
                (first, count) = (next, 0);
            }
        }
        EndBlock(isLast: true);
        pending.AlignToByte();
        var sum = new Adler32();
        sum.Update(data);
        pending.WriteShortMSB((int)(sum.Value >> 16));
        pending.WriteShortMSB((int)(sum.Value & 0xffff));
        compressed.Write(buffer, 0, pending.Flush(buffer, 0, buffer.Length));
        return compressed.ToArray();

        void EndBlock(bool isLast)
        {
            codes.FlushBlock(data, first, next - first, isLast);
            compressed.Write(buffer, 0, pending.Flush(buffer, 0, buffer.Length));
        }
    }
}
