using System.Buffers;
using System.Buffers.Binary;
using System.Numerics;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// Where bytes repeat what came not long before (Ziv and Lempel 1977, as RFC 1951, 4 describes the search): places that
/// begin alike are chained, the last one first.
/// </summary>
internal sealed class Repeats : IDisposable
{
    /// <summary>How far back a repeat may lie, and how long one may be (RFC 1951, 3.2.5).</summary>
    private const int Window = 1 << 15,
        Longest = 258;

    private const int KeyBits = 15;

    /// <summary>Scatters beginnings over the keys: near the golden section of the numbers of 64 bits.</summary>
    private const ulong Scatter = 0x9e3779b99e3779b1;

    /// <summary>Farther back than any window.</summary>
    private const int None = int.MinValue;

    private readonly byte[] data;
    private readonly int end;
    private readonly int effort;
    private readonly int enough;
    private readonly int beginning;

    /// <summary>For each key of a beginning the last place, and for each place in the window the one before.</summary>
    private readonly int[] latest = ArrayPool<int>.Shared.Rent(1 << KeyBits);
    private readonly int[] before = ArrayPool<int>.Shared.Rent(Window);

    /// <summary>Where the next one begins, and the longest repeat of it.</summary>
    private int at;
    private (int Length, int Distance) here;

    /// <param name="count">Bytes of the data that count.</param>
    internal Repeats(byte[] data, int count, RepeatSearch search)
    {
        (this.data, end) = (data, count);
        (effort, beginning, enough) = (search.Effort, search.Beginning, search.Enough);
        Array.Fill(latest, None);
        here = Find(0, longerThan: 0);
    }

    public void Dispose()
    {
        ArrayPool<int>.Shared.Return(latest);
        ArrayPool<int>.Shared.Return(before);
    }

    /// <summary>All of the data in turn: a single byte, with distance 0, or a repeat.</summary>
    internal (int Length, int Distance) Next()
    {
        var taken = here;
        var isEnough = taken.Length >= enough;
        var next = isEnough ? default : Find(at + 1, taken.Length);
        if (taken.Length == 0 || next.Length > taken.Length)
        {
            (at, here) = (at + 1, next);
            return (1, 0);
        }
        // A stretch of one value alone is known by its end.
        var unknown =
            taken is { Length: Longest, Distance: 1 } ? Longest - beginning
            : isEnough ? 1
            : 2;
        Chain(at + unknown, at + taken.Length);
        at += taken.Length;
        here = Find(at, longerThan: 0);
        return taken;
    }

    /// <summary>The longest repeat at a place, which is chained from now on; no length if there is none.</summary>
    private (int Length, int Distance) Find(int at, int longerThan)
    {
        if (at + beginning > end)
            return default;
        var place = Chain(at, Beginning(at));
        var most = Math.Min(Longest, end - at);
        var (length, distance) = (Math.Max(longerThan, beginning - 1), 0);
        for (var tries = effort; tries > 0 && place > at - Window && length < most; tries--)
        {
            // Mostly that byte tells that it is no longer.
            if (data[place + length] == data[at + length])
            {
                var common = Common(place, at, most);
                if (common > length)
                    (length, distance) = (common, at - place);
            }
            place = before[place & (Window - 1)];
        }
        return distance > 0 ? (length, distance) : default;
    }

    /// <summary>How many bytes from two places on are the same.</summary>
    private int Common(int one, int other, int most)
    {
        var same = 0;
        for (; same + sizeof(ulong) <= most; same += sizeof(ulong))
            if ((Eight(one + same) ^ Eight(other + same)) is var differ and not 0)
                return same + (BitOperations.TrailingZeroCount(differ) / 8);
        while (same < most && data[one + same] == data[other + same])
            same++;
        return same;
    }

    private void Chain(int from, int to)
    {
        for (; from < Math.Min(to, end - sizeof(ulong) + 1); from++)
            Chain(from, Eight(from));
        for (; from < Math.Min(to, end - beginning + 1); from++)
            Chain(from, Beginning(from));
    }

    /// <summary>The last place that begins like this one, of which this is the last now.</summary>
    /// <param name="bytes">From there, the first one lowest.</param>
    private int Chain(int at, ulong bytes)
    {
        var key = (bytes << (64 - (8 * beginning))) * Scatter >> (64 - KeyBits);
        var place = latest[key];
        (latest[key], before[at & (Window - 1)]) = (at, place);
        return place;
    }

    private ulong Beginning(int at)
    {
        if (at + sizeof(ulong) <= end)
            return Eight(at);
        Span<byte> last = stackalloc byte[sizeof(ulong)];
        last.Clear();
        data.AsSpan(at, end - at).CopyTo(last);
        return BinaryPrimitives.ReadUInt64LittleEndian(last);
    }

    private ulong Eight(int at) => BinaryPrimitives.ReadUInt64LittleEndian(data.AsSpan(at));
}

/// <summary>How repeats are looked for.</summary>
/// <param name="Effort">At how many earlier places.</param>
/// <param name="Beginning">Bytes by which places are chained; no repeat is shorter.</param>
/// <param name="Enough">
/// A repeat of so many bytes is taken without looking whether the next place has a longer one.
/// </param>
internal sealed record RepeatSearch(int Effort, int Beginning, int Enough)
{
    /// <summary>Where repetition is what there is: flat colours, or text.</summary>
    internal static readonly RepeatSearch Thorough = new(Effort: 1024, Beginning: 4, Enough: 32);

    /// <summary>
    /// Where there is little. Against 12 places, beginnings of four bytes and repeats of 16 the search and all of the
    /// compressor take a quarter less time, and the pictures of a part and of a finished piece 0 to 3 % more room.
    /// </summary>
    internal static readonly RepeatSearch Textured = new(Effort: 8, Beginning: 6, Enough: 8);
}
