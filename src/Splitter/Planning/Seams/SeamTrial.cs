using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// What seams between some fields will show, by the labelling that draws them, on coarser cells and within a window:
/// good enough to compare two places of one field, and a hundred times as quick as drawing all seams.
/// </summary>
internal sealed class SeamTrial(Drawing drawing)
{
    /// <summary>
    /// Side of a cell, µm: on cells of 4 mm seams miss the gaps between shapes, on those of 1 mm it takes ten times as
    /// long.
    /// </summary>
    private const int Cell = 2 * Units.Millimetre;

    /// <summary>Millimetres of plain fill, and a little for length and for room.</summary>
    /// <param name="grounds">Of all fields, in sewing order.</param>
    /// <param name="window">Only seams in here are looked at.</param>
    internal double Shown(ImmutableArray<Box> grounds, Box window)
    {
        ImmutableArray<Box> near = [.. grounds.Where(g => Shares(g, window))];
        ImmutableArray<Shape> shapes = [.. drawing.Shapes.Where(s => s.Footprint.Bounds.Meets(window))];
        if (near.Length < 2 || shapes.IsEmpty)
            return 0;
        var part = drawing with { Shapes = shapes };
        var grid = new SeamGrid([.. near.Select(g => g.Common(window))], Cell);
        var wholeness = new Wholeness(part, near);
        var room = new SeamRoom(near, null, _ => true);
        var problem = SeamCosts.State(grid, part, wholeness, room, new LayerMap(grid, part, wholeness.IsCut));
        var start = new int[problem.NodeCount];
        for (var node = 0; node < start.Length; node++)
            start[node] = problem.Fields[node] switch
            {
                [] => ArcTracer.Outside,
                [var only] => only,
                var fields when node < grid.CellCount => Deepest(fields, node),
                var fields => fields[0],
            };
        return problem.Cost(Labelling.Solve(problem, start)) / (double)SeamCosts.Unit;

        static bool Shares(Box ground, Box window) =>
            ground.Common(window) is { IsEmpty: false } common && common.Width > 0 && common.Height > 0;

        int Deepest(int[] fields, int cell)
        {
            var (x, y) = (grid.MiddleX[cell % grid.Columns], grid.MiddleY[cell / grid.Columns]);
            return fields.MaxBy(f => room.FromEdge(f, x, y));
        }
    }
}
