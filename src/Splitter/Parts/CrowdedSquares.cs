using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>Squares that have more layers or needle holes than they bear, and those near them.</summary>
internal sealed class CrowdedSquares
{
    /// <summary>It is known what hides thread up to this many squares beside crowded ones.</summary>
    private const int Near = 2;

    private readonly GroundMap crowded;
    private readonly GroundMap near;
    private readonly int count;
    private readonly Box ground;

    /// <param name="layers">Of the whole cloth.</param>
    /// <param name="holes">The same of needle holes.</param>
    /// <param name="most">Layers that cloth and needle bear.</param>
    internal CrowdedSquares(ThreadGrid layers, ThreadGrid holes, int most)
    {
        ground = layers.Numbers.Ground;
        ImmutableArray<Square> all =
        [
            .. layers.Squares.Where(s => layers.LayersOn(s) > most),
            .. holes.Squares.Where(s => holes.HolesIn(s) > ThreadGrid.MostHoles),
        ];
        ImmutableArray<Square> around =
        [
            .. all.SelectMany(s => s.Within(Near)).Distinct().Where(s => ground.Contains(s.Middle)),
        ];
        crowded = new([all]);
        near = new([.. around.Select(s => (ImmutableArray<Square>)[s])]);
        count = around.Length;
    }

    /// <summary>Whether the box around a stitch meets a crowded one.</summary>
    internal bool Meet(Point from, Point to) => crowded.Meets(Box.Around([from, to]).Grown(ThreadGrid.ThreadWidth / 2));

    /// <summary>What the stitches of a part cover near them.</summary>
    /// <param name="blocks">In sewing order.</param>
    internal CoveredCells CoverOf(IReadOnlyCollection<Block> blocks) => new(near, count, ground, blocks);
}
