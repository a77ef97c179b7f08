using ICSharpCode.SharpZipLib.Zip.Compression;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// Bytes compressed (RFC 1950). The compressor is managed code that a system cannot exchange: .NET's own gives other
/// bytes with another zlib.
/// </summary>
internal static class Deflated
{
    internal static byte[] Of(byte[] data, int level = Deflater.BEST_COMPRESSION)
    {
        var deflater = new Deflater(level);
        deflater.SetInput(data);
        deflater.Finish();
        using var compressed = new MemoryStream();
        var buffer = new byte[1 << 16];
        while (!deflater.IsFinished)
            compressed.Write(buffer, 0, deflater.Deflate(buffer));
        return compressed.ToArray();
    }
}
