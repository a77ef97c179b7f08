using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// The last resort where a tie makes too many layers: the path's own stitches are shortened instead, which hold the
/// thread as well and bring none to the cloth.
/// </summary>
/// <param name="layers">Of the whole cloth; what is changed is counted there.</param>
/// <param name="holes">The same of needle holes.</param>
/// <param name="most">Layers that cloth and needle bear.</param>
internal sealed class ShortTies(ThreadGrid layers, ThreadGrid holes, double most)
{
    /// <param name="blocks">Of a part, in sewing order.</param>
    internal void Shorten(Block[] blocks)
    {
        for (var i = 0; i < blocks.Length; i++)
        {
            Point? before = i > 0 ? blocks[i - 1].End : null,
                after = i + 1 < blocks.Length ? blocks[i + 1].Start : null;
            if (Ties.IsTiedAtStart(blocks[i]))
                blocks[i] = Shortened(
                    blocks[i],
                    Ties.AtStartOf(blocks[i]),
                    ShortTie.AtStart,
                    tied => IsTrimmed(before, tied.Start)
                );
            if (Ties.IsTiedAtEnd(blocks[i]))
                blocks[i] = Shortened(
                    blocks[i],
                    Ties.AtEndOf(blocks[i]),
                    ShortTie.AtEnd,
                    tied => IsTrimmed(after, tied.End)
                );
        }
    }

    /// <param name="isTrimmed">Whether the thread is cut at this end.</param>
    private Block Shortened(
        Block block,
        ImmutableArray<Point> tie,
        Func<Block, Block?> shorten,
        Func<Block, bool> isTrimmed
    )
    {
        layers.Lay(tie.AsSpan(), -ThreadGrid.ThreadWidth);
        var isTooMuch = layers.TooMany(tie.AsSpan(), most) > 0;
        layers.Lay(tie.AsSpan(), ThreadGrid.ThreadWidth);
        if (
            !isTooMuch
            || shorten(block) is not { } shortened
            || (isTrimmed(shortened) && !isTrimmed(block))
            || !IsPierced(block, shortened)
        )
            return block;
        ClothLayers.Lay(layers, block, -1);
        ClothLayers.Lay(layers, shortened, 1);
        return shortened;
    }

    private static bool IsTrimmed(Point? from, Point to) => from is { } end && JumpOrder.IsTrimmed(end, to);

    /// <summary>Makes the holes of one instead of the other, unless they would be too many where more come.</summary>
    private bool IsPierced(Block block, Block shortened)
    {
        var (made, left) = Changed(block.Stitches.AsSpan(), shortened.Stitches.AsSpan());
        var more = Holes(made)
            .Concat(Holes(left).Select(on => (on.Square, Count: -on.Count)))
            .GroupBy(on => on.Square, on => on.Count)
            .ToDictionary(on => on.Key, on => on.Sum());
        if (more.Any(on => on.Value > 0 && holes.HolesIn(on.Key) + on.Value > ThreadGrid.MostHoles))
            return false;
        foreach (var stitch in left)
            holes.Close(stitch.At);
        foreach (var stitch in made)
            holes.Pierce(stitch.At);
        return true;
    }

    /// <summary>Stitches that only the new ones have, and only the old ones: most are the same.</summary>
    private static (Stitch[] Made, Stitch[] Left) Changed(ReadOnlySpan<Stitch> old, ReadOnlySpan<Stitch> now)
    {
        var (start, end) = (old.CommonPrefixLength(now), 0);
        while (end < Math.Min(old.Length, now.Length) - start && old[^(end + 1)] == now[^(end + 1)])
            end++;
        return ([.. now[start..^end]], [.. old[start..^end]]);
    }

    private static IEnumerable<(Square Square, int Count)> Holes(Stitch[] stitches) =>
        stitches
            .SelectMany(stitch => Quarter.At(stitch.At).Squares)
            .GroupBy(square => square)
            .Select(on => (on.Key, on.Count()));
}
