using System.Collections.Immutable;
using System.Text;

namespace Splitter.Outputs;

/// <summary>What a set's sums list, as <see cref="SumsWriter"/> writes them.</summary>
internal static class SumsReader
{
    /// <summary>A line of the sums: 64 digits, two spaces, the name.</summary>
    private const int NameColumn = 66;

    /// <summary>The names of its files, those alone that lie in the folder of the sums.</summary>
    internal static ImmutableArray<string> Names(ReadOnlySpan<byte> sums) =>
        [
            .. Encoding
                .UTF8.GetString(sums)
                .Split('\n')
                .Where(line => line.Length > NameColumn)
                .Select(line => line[NameColumn..])
                .Where(IsPlainName)
                .Distinct(StringComparer.Ordinal),
        ];

    /// <summary>A list that was tampered with must not lead out of the folder.</summary>
    internal static bool IsPlainName(string name) =>
        name.Length > 0 && name is not ("." or "..") && name.IndexOfAny(['/', '\\', ':']) < 0;
}
