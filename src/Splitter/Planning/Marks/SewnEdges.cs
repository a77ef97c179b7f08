using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Planning.Marks;

/// <summary>
/// Whether a person will find a shape at a place, sewn by the part that has the ground there: slivers and scraps beside
/// a seam are sewn by the neighbour.
/// </summary>
internal sealed class SewnEdges(Drawing drawing, Division division)
{
    /// <summary>
    /// Half the width of ground that a part surely keeps, µm: slivers that are given away are at most twice as wide as
    /// the parts overlap, which seldom is more than 1.5 mm.
    /// </summary>
    private const int HalfWidth = 1500;

    /// <summary>A line that goes on for this, µm, is no scrap; twice what is.</summary>
    private const int LeastLine = 3 * Units.Millimetre;

    /// <summary>
    /// How far from the place ground or line may lie, µm: to the middle of the ground in a narrow corner.
    /// </summary>
    private const int Near = 4 * Units.Millimetre;

    internal bool Has(AlignmentStitch cross)
    {
        var shape = drawing.Shapes.First(s => s.Id == cross.On);
        var territory = division.Territories[cross.With];
        return shape switch
        {
            FillShape => HasGround(shape.Footprint, territory, cross.At),
            SatinShape satin => HasLine(satin.Columns.Select(MiddleOf), territory, cross.At),
            RunShape run => HasLine(run.Lines, territory, cross.At),
            _ => throw new InvalidOperationException($"{shape.GetType().Name} has no edge to meet."),
        };
    }

    private static Polyline MiddleOf(Column column) => new([.. column.Rungs.Select(rung => rung.Middle)]);

    private static bool HasGround(Region footprint, Region territory, Point at)
    {
        var around = Region.Of(Box.Around([at]).Grown(Near + HalfWidth));
        var ground = Polygons.Intersect(Polygons.Intersect(footprint, around), territory);
        return Polygons.Distance(Polygons.Offset(ground, -HalfWidth), at) <= Near;
    }

    private static bool HasLine(IEnumerable<Polyline> lines, Region territory, Point at)
    {
        var ground = new PathClipping(territory);
        return lines
            .Where(line => line.Bounds.Grown(AlignmentStitch.Arm).Contains(at))
            .SelectMany(line => ground.Inside(line))
            .Any(stretch => stretch.Length >= LeastLine && stretch.DistanceTo(at) <= AlignmentStitch.Arm);
    }
}
