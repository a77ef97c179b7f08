using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>Squares that have more layers or needle holes than they bear, and those near them.</summary>
internal sealed class CrowdedSquares
{
    /// <summary>It is known what hides thread up to this far beside crowded ones, mm.</summary>
    private const int Near = 2;

    private readonly GroundMap crowded;
    private readonly GroundMap near;
    private readonly int count;
    private readonly Box ground;

    /// <param name="layers">Of the whole cloth.</param>
    /// <param name="holes">The same of needle holes.</param>
    /// <param name="most">Layers that cloth and needle bear.</param>
    internal CrowdedSquares(ThreadGrid layers, ThreadGrid holes, double most)
    {
        ground = layers.Ground;
        ImmutableArray<Quarter> all =
        [
            .. layers
                .Fuller(most)
                .Concat(holes.Fuller(double.PositiveInfinity, ThreadGrid.MostHoles))
                .SelectMany(s => s.Quarters)
                .Distinct(),
        ];
        ImmutableArray<Quarter> around = [.. Quarter.Near(all, Near).Where(q => ground.Contains(q.Middle))];
        crowded = new([all]);
        near = new([.. around.Select(q => (ImmutableArray<Quarter>)[q])]);
        count = around.Length;
    }

    /// <summary>Whether the box around a stitch meets a crowded one.</summary>
    internal bool Meet(Point from, Point to) => crowded.Meets(Box.Around([from, to]).Grown(ThreadGrid.ThreadWidth / 2));

    /// <summary>What the stitches of a part cover near them.</summary>
    /// <param name="blocks">In sewing order.</param>
    internal CoveredCells CoverOf(IReadOnlyCollection<Block> blocks) => new(near, count, ground, blocks);
}
