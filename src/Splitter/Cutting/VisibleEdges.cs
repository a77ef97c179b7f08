using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Cutting;

/// <summary>
/// Where a fill is sewn after a shape that lies over it, its rows would run over that shape's edge: there it is cut at the
/// edge that one sees, as if its trap under the other had never been.
/// </summary>
internal static class VisibleEdges
{
    internal static FillPiece Cut(FillPiece piece, int shape, Drawing drawing, Plan plan)
    {
        // A line is too fine to leave a gap for: it shows less of itself, and the plan says so.
        var hidden = plan
            .TurnedLayers.Where(t =>
                t.Lower == shape && t.Then == piece.Hooping && drawing.Shapes[t.Upper] is not RunShape
            )
            .Select(t =>
                plan.Owners[t.Upper] is null
                    ? Polygons.Intersect(drawing.Shapes[t.Upper].Footprint, plan.Hoopings[t.First].Territory)
                    : drawing.Shapes[t.Upper].Footprint
            )
            .ToList();
        if (hidden.Count == 0)
            return piece;
        var above = Polygons.Union(hidden);
        var even = Polygons.Subtract(piece.EvenRows, above);
        return piece with
        {
            Core = Polygons.Subtract(piece.Core, above),
            EvenRows = even,
            OddRows = ReferenceEquals(piece.EvenRows, piece.OddRows) ? even : Polygons.Subtract(piece.OddRows, above),
        };
    }
}
