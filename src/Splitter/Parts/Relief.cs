using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// Leaves out needle holes where more lie on a square millimetre than they should: what is hidden first, then holes within
/// rows. Ties, columns and runs stay as they are.
/// </summary>
internal sealed class Relief(ThreadGrid cloth)
{
    /// <summary>Longest stitch that may come of it, µm: longer ones lie loose under others. Common practice, no source.</summary>
    private const double Longest = 6 * Units.Millimetre;

    /// <summary>How far hidden thread may move, µm: a thread's width.</summary>
    private const double HiddenMove = ThreadGrid.ThreadWidth;

    /// <summary>How far thread may move that shows, µm: a quarter of its width.</summary>
    private const double ShownMove = ThreadGrid.ThreadWidth / 4.0;

    /// <summary>What may be left out, one after the other.</summary>
    private static readonly ImmutableArray<(bool Rows, bool Hidden)> Rounds =
    [
        (Rows: false, Hidden: true),
        (Rows: true, Hidden: true),
        (Rows: true, Hidden: false),
    ];

    /// <summary>Relieves the parts, whose thread lies over each other.</summary>
    /// <param name="parts">The blocks of each in sewing order, with what they hide.</param>
    internal static void Relieve(IReadOnlyList<(Block[] Blocks, HiddenGround Ground)> parts, ThreadGrid cloth)
    {
        var relief = new Relief(cloth);
        foreach (var round in Rounds)
        foreach (var (blocks, ground) in parts)
            for (var i = 0; i < blocks.Length; i++)
                blocks[i] = relief.Relieved(blocks[i], i, ground, round);
    }

    private Block Relieved(Block block, int place, HiddenGround ground, (bool Rows, bool Hidden) round)
    {
        if (!block.Stitches.Any(s => IsCrowded(s.At)))
            return block;
        var kept = ImmutableArray.CreateBuilder<Stitch>(block.Stitches.Length);
        for (var i = 0; i < block.Stitches.Length; i++)
        {
            var stitch = block.Stitches[i];
            if (
                i > 0
                && i + 1 < block.Stitches.Length
                && IsCrowded(stitch.At)
                && IsLeftOut(kept[^1].At, stitch, block.Stitches[i + 1], place, ground, round)
            )
                cloth.Close(stitch.At);
            else
                kept.Add(stitch);
        }
        return block with { Stitches = kept.ToImmutable() };
    }

    private bool IsCrowded(Point at) => cloth.HolesIn(Square.At(at)) > ThreadGrid.Crowded;

    private static bool IsLeftOut(
        Point before,
        Stitch stitch,
        Stitch next,
        int place,
        HiddenGround ground,
        (bool Rows, bool Hidden) round
    )
    {
        if (!IsMovable(stitch.Use) || !IsMovable(next.Use) || stitch.Use == StitchUse.Fill != round.Rows)
            return false;
        // Rows hide what else their own block has sewn, but not each other.
        var isHidden = ground.IsHidden(
            ground.At(stitch.At),
            ground.FirstOf(stitch.Use == StitchUse.Fill ? place + 1 : place)
        );
        return isHidden == round.Hidden
            && before.DistanceTo(next.At) <= Longest
            && Polygons.Distance(before, next.At, stitch.At, stitch.At) <= (isHidden ? HiddenMove : ShownMove);
    }

    private static bool IsMovable(StitchUse use) => use is StitchUse.Fill or StitchUse.Travel or StitchUse.Underlay;
}
