using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Stitching.Fills;

namespace Splitter.Stitching.Estimates;

/// <summary>Stitches of a fill: rows of its area, two ends for each row, and the underlay.</summary>
internal static class FillEstimate
{
    /// <summary>
    /// Hidden ways between sections, as a share of rows and underlay. Measured on both demo works and both hoops: 4.3 to
    /// 7.6 %; near the middle of that.
    /// </summary>
    private const double Travel = 0.0565;

    internal static PieceEstimate Of(FillPiece piece)
    {
        var style = piece.Shape.Style;
        // Half of the rows have even numbers; on a ground of its own each kind is half as dense.
        var rows =
            (
                Rows(piece.EvenRows, style.Angle, style.RowSpacing, style.StitchLength, style.Pull)
                + Rows(piece.OddRows, style.Angle, style.RowSpacing, style.StitchLength, style.Pull)
            ) / 2;
        return new((rows + Underlay(piece, style)) * (1 + Travel), Math.Max(1, piece.EvenRows.Polygons.Length));
    }

    /// <summary>
    /// A row has a penetration at both ends, and between them one a stitch length on average. Rows and their ends follow
    /// from the outline: each stretch of it ends as many rows as lie between its own two ends.
    /// </summary>
    private static double Rows(Region ground, double angle, double spacing, double stitch, double pull)
    {
        var ends = ground.Rings.Sum(ring => Across(ring, angle)) / spacing;
        var length = (ground.Area / spacing) + (ends * (pull - PolygonSewer.RowEnd));
        return ends + Math.Max(0, length / stitch);
    }

    /// <summary>How far an outline goes to and fro across the rows, µm.</summary>
    private static double Across(Ring ring, double angle)
    {
        var (sin, cos) = Math.SinCos(angle * Math.PI / 180);
        var sum = 0.0;
        for (var i = 0; i < ring.Points.Length; i++)
        {
            var way = Vector.Between(ring.Points[i], ring.Points[(i + 1) % ring.Points.Length]);
            sum += Math.Abs((way.Y * cos) - (way.X * sin));
        }
        return sum;
    }

    private static double Underlay(FillPiece piece, SewStyle style)
    {
        if (style.Underlay.IsEmpty)
            return 0;
        var inside = Polygons.Offset(piece.Bare, -Fills.Underlay.Inset);
        var stitches = 0.0;
        foreach (var kind in style.Underlay)
            if (kind == UnderlayKind.Edge)
                stitches += Polygons.Simplify(inside, Fills.Underlay.Straying).Rings.Sum(Edge);
            else if (kind == UnderlayKind.Cross)
                stitches += Rows(
                    inside,
                    style.Angle + 90,
                    Fills.Underlay.CrossSpacing,
                    Fills.Underlay.StitchLength,
                    -Fills.Underlay.StitchLength / 4.0 + PolygonSewer.RowEnd
                );
        return stitches;
    }

    /// <summary>Each side of an outline in equal stitches.</summary>
    private static double Edge(Ring ring) =>
        Enumerable
            .Range(0, ring.Points.Length)
            .Sum(i =>
                Math.Ceiling(
                    ring.Points[i].DistanceTo(ring.Points[(i + 1) % ring.Points.Length]) / Fills.Underlay.StitchLength
                )
            );
}
