using System.Collections.Immutable;
using System.Text;
using CsCheck;

namespace Splitter.Tests.Fuzzing;

/// <summary>
/// Good files, changed in a few places at random: bytes replaced, left out, doubled, or replaced by pieces that mean something
/// to the reader, so that changes go deep.
/// </summary>
internal static class Mutation
{
    /// <summary>Changes of one file; more of them, and little is left that any reader looks at.</summary>
    private const int MostChanges = 6;

    /// <summary>Numbers that readers of all kinds trip over.</summary>
    private static readonly ImmutableArray<string> Numbers =
    [
        "0",
        "-1",
        "-0.0",
        "1e-320",
        "1e308",
        "1e309",
        "NaN",
        "Infinity",
        "2147483648",
        "-9223372036854775809",
        "0.1e",
        ".",
    ];

    /// <param name="good">Where to start from, one of them at a time.</param>
    /// <param name="pieces">Words and signs of the format.</param>
    internal static Gen<byte[]> Of(IReadOnlyList<byte[]> good, params string[] pieces)
    {
        var changes = Change([.. pieces, .. Numbers]).Array[1, MostChanges];
        return Gen.Select(
            Gen.Int[0, good.Count - 1],
            changes,
            (which, all) => all.Aggregate(good[which], (bytes, change) => change(bytes))
        );
    }

    private static Gen<Func<byte[], byte[]>> Change(ImmutableArray<string> pieces)
    {
        var at = Gen.Int[0, int.MaxValue];
        var piece = Gen.Int[0, pieces.Length - 1].Select(i => Encoding.UTF8.GetBytes(pieces[i]));
        return Gen.OneOf<Func<byte[], byte[]>>(
            Gen.Select(at, Gen.Byte, (start, value) => Replace(start, 1, [value])),
            Gen.Select(at, Gen.Int[0, 7], (start, bit) => Flip(start, bit)),
            Gen.Select(at, Gen.Int[1, 60], (start, count) => Replace(start, count, [])),
            Gen.Select(at, Gen.Int[0, 4], piece, Replace),
            Gen.Select(at, at, Gen.Int[1, 80], CopyOver),
            at.Select<int, Func<byte[], byte[]>>(end => bytes => bytes[..(end % (bytes.Length + 1))])
        );
    }

    private static Func<byte[], byte[]> Replace(int at, int count, byte[] by) =>
        bytes =>
        {
            var start = at % (bytes.Length + 1);
            return [.. bytes[..start], .. by, .. bytes[Math.Min(bytes.Length, start + count)..]];
        };

    private static Func<byte[], byte[]> Flip(int at, int bit) =>
        bytes => bytes.Length == 0 ? bytes : Replace(at, 1, [(byte)(bytes[at % bytes.Length] ^ (1 << bit))])(bytes);

    private static Func<byte[], byte[]> CopyOver(int from, int to, int count) =>
        bytes =>
        {
            var start = from % (bytes.Length + 1);
            return Replace(to, 0, bytes[start..Math.Min(bytes.Length, start + count)])(bytes);
        };
}
