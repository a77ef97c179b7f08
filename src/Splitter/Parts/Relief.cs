using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>
/// Leaves out needle holes of a block where more lie on a square millimetre than they should: what is hidden first,
/// then holes within rows. Ties, columns and runs stay as they are.
/// </summary>
/// <param name="place">Of the block, in the sewing order of its part.</param>
/// <param name="ground">What the part hides.</param>
internal sealed class Relief(Block block, int place, HiddenGround ground)
{
    /// <summary>
    /// Longest stitch that may come of it, µm: longer ones lie loose under others. Common practice, no source.
    /// </summary>
    internal const double Longest = 6 * Units.Millimetre;

    /// <summary>How far hidden thread may move, all in all, µm: a thread's width.</summary>
    internal const double HiddenMove = ThreadGrid.ThreadWidth;

    /// <summary>How far thread may move that shows, all in all, µm: a quarter of its width.</summary>
    internal const double ShownMove = ThreadGrid.ThreadWidth / 4.0;

    /// <summary>What may be left out, one after the other.</summary>
    private static readonly ImmutableArray<Round> Rounds =
    [
        new(Rows: false, Hidden: true),
        new(Rows: true, Hidden: true),
        new(Rows: true, Hidden: false),
    ];

    private readonly record struct Round(bool Rows, bool Hidden);

    /// <summary>Stitches that are still sewn, by their numbers in the block.</summary>
    private List<int> left = [.. Enumerable.Range(0, block.Stitches.Length)];

    /// <summary>Relieves the parts, whose thread lies over each other.</summary>
    /// <param name="parts">The blocks of each in sewing order, with what they hide.</param>
    /// <param name="cloth">Holes of all that they sew; those that are left out are closed there.</param>
    /// <param name="layers">The same of thread; what goes straight on is counted there.</param>
    internal static void Relieve(
        IReadOnlyList<(Block[] Blocks, HiddenGround Ground)> parts,
        ThreadGrid cloth,
        ThreadGrid layers
    )
    {
        var reliefs = parts
            .Select(part => part.Blocks.Select((block, i) => new Relief(block, i, part.Ground)).ToArray())
            .ToArray();
        foreach (var round in Rounds)
        foreach (var relief in reliefs.SelectMany(part => part))
            relief.LeaveOut(round, cloth, layers);
        foreach (var (part, relieved) in parts.Zip(reliefs))
            for (var i = 0; i < relieved.Length; i++)
                part.Blocks[i] = relieved[i].Relieved;
    }

    private Block Relieved =>
        left.Count == block.Stitches.Length
            ? block
            : block with
            {
                Stitches = [.. left.Select(i => block.Stitches[i])],
            };

    private void LeaveOut(Round round, ThreadGrid cloth, ThreadGrid layers)
    {
        var kept = new List<int>(left.Count);
        for (var k = 0; k < left.Count; k++)
        {
            var at = block.Stitches[left[k]].At;
            if (
                k > 0
                && k + 1 < left.Count
                && cloth.HolesAt(at) > ThreadGrid.Crowded
                && IsLeftOut(kept[^1], left[k], left[k + 1], round)
            )
            {
                var (from, to) = (block.Stitches[kept[^1]].At, block.Stitches[left[k + 1]].At);
                layers.Lay([from, at, to], -ThreadGrid.ThreadWidth);
                layers.Lay([from, to], ThreadGrid.ThreadWidth);
                cloth.Close(at);
            }
            else
                kept.Add(left[k]);
        }
        left = kept;
    }

    private bool IsLeftOut(int before, int stitch, int next, Round round)
    {
        var (use, from, to) = (block.Stitches[stitch].Use, block.Stitches[before].At, block.Stitches[next].At);
        if (!IsMovable(use) || !IsMovable(block.Stitches[next].Use) || use == StitchUse.Fill != round.Rows)
            return false;
        if (IsHidden(stitch) != round.Hidden || from.DistanceTo(to) > Longest)
            return false;
        // Of those left out before it, too: the bound is one on how far the thread moves in the end.
        for (var i = before + 1; i < next; i++)
            if (
                Polygons.Distance(from, to, block.Stitches[i].At, block.Stitches[i].At)
                > (IsHidden(i) ? HiddenMove : ShownMove)
            )
                return false;
        return true;
    }

    /// <summary>Rows hide what else their own block has sewn, but not each other.</summary>
    private bool IsHidden(int stitch) =>
        ground.IsHidden(
            ground.At(block.Stitches[stitch].At),
            ground.FirstOf(block.Stitches[stitch].Use == StitchUse.Fill ? place + 1 : place)
        );

    private static bool IsMovable(StitchUse use) => use is StitchUse.Fill or StitchUse.Travel or StitchUse.Underlay;
}
