using System.Runtime.InteropServices;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>
/// The dots of stitches, found once for all stitches of a length and a direction that lie alike on the dots, as those
/// in the rows of a fill do.
/// </summary>
/// <param name="scale">Dots of a micrometre.</param>
internal sealed class StrandStamps(double scale)
{
    /// <summary>Stamps that are kept, so that they take no more than some fifteen megabytes.</summary>
    private const int Most = 20_000;

    /// <summary>Where the runs of a stamp begin and end, and its shades.</summary>
    private readonly record struct Places(int First, int End, int Shades);

    private readonly Dictionary<long, Places> stamps = [];
    private readonly List<DotRun> runs = [];
    private readonly List<byte> shades = [];

    /// <param name="way">From hole to hole, and where in its dot the first one lies, in 256ths of a dot.</param>
    internal StrandStamp Of(Point way, Point hole)
    {
        if (!stamps.TryGetValue(KeyOf(way, hole), out var places))
            places = Add(way, hole);
        var all = CollectionsMarshal.AsSpan(runs);
        return new(all[places.First..places.End], CollectionsMarshal.AsSpan(shades)[places.Shades..]);
    }

    private Places Add(Point way, Point hole)
    {
        if (stamps.Count == Most)
        {
            stamps.Clear();
            runs.Clear();
            shades.Clear();
        }
        var (first, firstShade) = (runs.Count, shades.Count);
        new StrandShape(way, hole, scale).Cover(runs, shades);
        var places = new Places(first, runs.Count, firstShade);
        stamps.Add(KeyOf(way, hole), places);
        return places;
    }

    /// <summary>All four numbers: 24 bits for a way, which is ten times the longest stitch, and 8 for a hole.</summary>
    private static long KeyOf(Point way, Point hole) =>
        ((long)way.X << 40) | ((way.Y & 0xffffffL) << 16) | ((long)hole.X << 8) | (uint)hole.Y;
}

/// <summary>The dots of a stitch, from the dot of its first hole on.</summary>
internal readonly ref struct StrandStamp(ReadOnlySpan<DotRun> covered, ReadOnlySpan<byte> shades)
{
    /// <summary>Stretches of rows, from the top.</summary>
    internal ReadOnlySpan<DotRun> Covered { get; } = covered;

    /// <summary>For each dot that is covered, in turn, what its shade adds to the strand's first one.</summary>
    internal ReadOnlySpan<byte> Shades { get; } = shades;
}
