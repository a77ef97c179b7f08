using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Stitching;

namespace Splitter.Parts;

/// <summary>
/// Corners that have to come out before a part is sewn: it sews over them, and no later part is set by them. All others
/// stay in until the work is finished.
/// </summary>
internal static class SewnOver
{
    /// <summary>
    /// Stitches nearer than this to a corner's arm, µm, may catch its loose thread: as far as cloth that is set by hand
    /// may lie off, and as a loose stitch of 4 mm may bow. Common practice, no source.
    /// </summary>
    private const int Near = 2 * Units.Millimetre;

    /// <summary>For each hooping the corners that come out before its body, by their order in the plan.</summary>
    internal static ImmutableArray<ImmutableArray<string>> TakenOut(
        Plan plan,
        ImmutableArray<ImmutableArray<BodyStep>> bodies
    )
    {
        var gone = new HashSet<string>(StringComparer.Ordinal);
        return
        [
            .. plan.Hoopings.Select(
                (_, i) =>
                {
                    var blocks = bodies[i].SelectMany(s => s.Blocks).Select(b => (Block: b, Ground: b.Bounds)).ToList();
                    return plan
                        .Corners.Where(c => c.Donor < i && c.Receivers.All(r => r <= i) && !gone.Contains(c.Id))
                        .Where(c => blocks.Exists(b => Covers(b.Block, b.Ground, c)))
                        .Select(c => c.Id)
                        .Where(gone.Add)
                        .ToImmutableArray();
                }
            ),
        ];
    }

    /// <param name="ground">Around the block: mostly that tells.</param>
    private static bool Covers(Block block, Box ground, Corner corner)
    {
        var around = Box.Around([corner.At, corner.ArmX, corner.ArmY]).Grown(Near);
        if (!around.Meets(ground))
            return false;
        for (var i = 1; i < block.Stitches.Length; i++)
        {
            var (from, to) = (block.Stitches[i - 1].At, block.Stitches[i].At);
            if (!around.Meets(Box.Around([from, to])))
                continue;
            foreach (var end in new[] { corner.ArmX, corner.ArmY })
                if (Polygons.Distance(from, to, corner.At, end) <= Near)
                    return true;
        }
        return false;
    }
}
