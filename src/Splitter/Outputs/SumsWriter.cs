using System.Security.Cryptography;
using System.Text;

namespace Splitter.Outputs;

/// <summary>SHA-256 sums (FIPS 180-4) in the form that <c>sha256sum -c</c> reads: sum, two spaces, name, LF.</summary>
internal static class SumsWriter
{
    internal const string FileName = "SHA256SUMS";

    internal static byte[] Write(IEnumerable<(string Name, ReadOnlyMemory<byte> Bytes)> files) =>
        Encoding.UTF8.GetBytes(string.Concat(files.Select(f => $"{Sum(f.Bytes.Span)}  {f.Name}\n")));

    internal static string Sum(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
