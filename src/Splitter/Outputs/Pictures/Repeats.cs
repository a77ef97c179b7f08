using System.Buffers.Binary;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// Where bytes repeat what came not long before (Ziv and Lempel 1977, as RFC 1951, 4 describes the search): places that
/// begin alike are chained, the last one first.
/// </summary>
internal sealed class Repeats
{
    /// <summary>How far back a repeat may lie, and how long one may be (RFC 1951, 3.2.5).</summary>
    private const int Window = 1 << 15,
        Longest = 258;

    /// <summary>Bytes of the beginning by which places are chained; no repeat is shorter.</summary>
    private const int Beginning = sizeof(uint);

    /// <summary>A repeat of so many bytes is taken without looking whether the next place has a longer one.</summary>
    private const int Enough = 32;

    private const int KeyBits = 15;

    /// <summary>Farther back than any window.</summary>
    private const int None = int.MinValue;

    private readonly byte[] data;
    private readonly int effort;

    /// <summary>For each key of a beginning the last place, and for each place in the window the one before.</summary>
    private readonly int[] latest = new int[1 << KeyBits];
    private readonly int[] before = new int[Window];

    private Repeats(byte[] data, int effort)
    {
        (this.data, this.effort) = (data, effort);
        Array.Fill(latest, None);
    }

    /// <summary>All of the data: single bytes, with distance 0, and repeats.</summary>
    /// <param name="effort">At how many earlier places to look.</param>
    internal static IEnumerable<(int Length, int Distance)> Of(byte[] data, int effort) =>
        new Repeats(data, effort).All();

    private IEnumerable<(int Length, int Distance)> All()
    {
        var here = Find(0, longerThan: 0);
        for (var at = 0; at < data.Length; )
        {
            var next = here.Length < Enough ? Find(at + 1, here.Length) : default;
            if (here.Length == 0 || next.Length > here.Length)
            {
                yield return (1, 0);
                (at, here) = (at + 1, next);
                continue;
            }
            yield return here;
            for (var passed = at + (here.Length < Enough ? 2 : 1); passed < at + here.Length; passed++)
                Chain(passed);
            at += here.Length;
            here = Find(at, longerThan: 0);
        }
    }

    /// <summary>The longest repeat at a place, which is chained from now on; no length if there is none.</summary>
    private (int Length, int Distance) Find(int at, int longerThan)
    {
        var place = Chain(at);
        var rest = data.AsSpan(at, Math.Min(Longest, data.Length - at));
        var (length, distance) = (Math.Max(longerThan, Beginning - 1), 0);
        for (var tries = effort; tries > 0 && place > at - Window && length < rest.Length; tries--)
        {
            // Mostly that byte tells that it is no longer.
            if (data[place + length] == rest[length])
            {
                var common = rest.CommonPrefixLength(data.AsSpan(place));
                if (common > length)
                    (length, distance) = (common, at - place);
            }
            place = before[place % Window];
        }
        return distance > 0 ? (length, distance) : default;
    }

    /// <summary>The last place that begins like this one, of which this is the last now.</summary>
    private int Chain(int at)
    {
        if (at + Beginning > data.Length)
            return None;
        var key = (BinaryPrimitives.ReadUInt32LittleEndian(data.AsSpan(at)) * 2654435761u) >> (32 - KeyBits);
        var place = latest[key];
        (latest[key], before[at % Window]) = (at, place);
        return place;
    }
}
