using System.IO.Compression;
using CsCheck;
using Splitter.Outputs.Pictures;

namespace Splitter.Tests.Outputs;

/// <summary>What we compress is read by .NET's own zlib, which also checks the sum.</summary>
public sealed class DeflatedTests
{
    /// <summary>
    /// Few values and long ones repeat; many hardly do. The longest have several blocks, and repeats farther back than
    /// the window.
    /// </summary>
    [Fact]
    public void AnyBytesAreReadBack() =>
        Gen.Select(Gen.Int[0, 60_000], Gen.Int[1, 256], Gen.Int[1, 500], Gen.UInt)
            .Holds(
                (length, values, run, seed) =>
                {
                    var data = Bytes(length, values, run, seed);
                    Assert.Equal(data, Read(Deflated.Of(data, RepeatSearch.Textured)));
                    Assert.Equal(data, Read(Deflated.Of(data, RepeatSearch.Thorough)));
                },
                cases: 30
            );

    [Fact]
    public void RepeatsTakeLittle()
    {
        var row = Bytes(length: 2000, values: 256, run: 1, seed: 7);
        byte[] rows = [.. Enumerable.Repeat(row, 100).SelectMany(r => r)];
        Assert.InRange(Deflated.Of(rows, RepeatSearch.Textured).Length, 0, row.Length + 2000);
    }

    private static byte[] Bytes(int length, int values, int run, uint seed)
    {
        var data = new byte[length];
        for (var i = 0; i < length; i++)
        {
            if (i % run == 0)
                seed = (seed * 1664525) + 1013904223;
            data[i] = (byte)((seed >> 24) % values);
        }
        return data;
    }

    private static byte[] Read(byte[] compressed)
    {
        using var stream = new ZLibStream(new MemoryStream(compressed), CompressionMode.Decompress);
        using var data = new MemoryStream();
        stream.CopyTo(data);
        return data.ToArray();
    }
}
