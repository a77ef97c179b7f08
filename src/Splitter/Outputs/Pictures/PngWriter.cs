using System.Buffers.Binary;
using ICSharpCode.SharpZipLib.Checksum;

namespace Splitter.Outputs.Pictures;

/// <summary>Pixels to PNG (ISO/IEC 15948).</summary>
internal static class PngWriter
{
    private static ReadOnlySpan<byte> Signature => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    private const int Channels = 3;
    private const byte Colour = 2;
    private const byte Bits = 8;
    private const byte PerMetre = 1;

    /// <summary>
    /// Rows as they are. Flat colours repeat whole stretches, which the compressor finds best unfiltered: an overview of
    /// ours takes 0.70 MB so, and 0.86 to 0.90 MB with the filters.
    /// </summary>
    private const byte Unfiltered = 0;

    internal static byte[] Write(Raster raster)
    {
        using var png = new MemoryStream();
        png.Write(Signature);
        Span<byte> header = stackalloc byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, raster.Width);
        BinaryPrimitives.WriteInt32BigEndian(header[4..], raster.Height);
        (header[8], header[9]) = (Bits, Colour);
        Chunk(png, "IHDR"u8, header);
        Span<byte> scale = stackalloc byte[9];
        BinaryPrimitives.WriteInt32BigEndian(scale, raster.PixelsPerMetre);
        BinaryPrimitives.WriteInt32BigEndian(scale[4..], raster.PixelsPerMetre);
        scale[8] = PerMetre;
        Chunk(png, "pHYs"u8, scale);
        Chunk(png, "IDAT"u8, Deflated.Of(Rows(raster)));
        Chunk(png, "IEND"u8, []);
        return png.ToArray();
    }

    private static byte[] Rows(Raster raster)
    {
        var row = raster.Width * Channels;
        var rows = new byte[(row + 1) * raster.Height];
        for (var y = 0; y < raster.Height; y++)
        {
            rows[y * (row + 1)] = Unfiltered;
            raster.Pixels.AsSpan(y * row, row).CopyTo(rows.AsSpan((y * (row + 1)) + 1));
        }
        return rows;
    }

    private static void Chunk(MemoryStream png, ReadOnlySpan<byte> type, ReadOnlySpan<byte> data)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, data.Length);
        png.Write(number);
        png.Write(type);
        png.Write(data);
        var sum = new Crc32();
        byte[] summed = [.. type, .. data];
        sum.Update(summed);
        BinaryPrimitives.WriteUInt32BigEndian(number, (uint)sum.Value);
        png.Write(number);
    }
}
