using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Stitching.Fills;

namespace Splitter.Stitching.Estimates;

/// <summary>Stitches of a fill: rows of its area, two ends for each row, and the underlay.</summary>
internal static class FillEstimate
{
    /// <summary>
    /// Hidden ways between sections, as a share of rows and underlay. Measured on both demo works and both hoops: 4.3
    /// to 7.6 %; near the middle of that.
    /// </summary>
    private const double Travel = 0.0565;

    internal static PieceEstimate Of(FillPiece piece)
    {
        var lattice = Lattice.Of((FillShape)piece.Shape);
        var pull = piece.Shape.Style.Pull;
        // Half of the rows have even numbers; on a ground of its own each kind is half as dense.
        var rows = (Rows(piece.EvenRows, lattice, pull) + Rows(piece.OddRows, lattice, pull)) / 2;
        return new((rows + Underlay(piece)) * (1 + Travel), Math.Max(1, piece.EvenRows.Polygons.Length));
    }

    /// <summary>
    /// A row has a penetration at both ends, and between them one a stitch length on average. Rows and their ends
    /// follow from the outline: each stretch of it ends as many rows as lie between its own two ends. Along a guide
    /// penetrations are where bends ask for them, and are counted.
    /// </summary>
    private static double Rows(Region ground, Lattice lattice, double pull)
    {
        if (!lattice.IsRigid)
            return RowScan
                .Of(ground, lattice)
                .Spans.Sum(s => 2 + lattice.Penetrations(s.Row, s.From - Inwards(s), s.To + Inwards(s)).Count());
        var ends = ground.Rings.Sum(ring => Across(lattice.PlacesOf(ring)));
        var length = (ground.Area / lattice.Spacing) + (ends * (pull - PolygonSewer.RowEnd));
        return ends + Math.Max(0, length / lattice.StitchLength);

        double Inwards(Span span) => lattice.Along(span.Row, span.Middle, pull - PolygonSewer.RowEnd);
    }

    /// <summary>How far an outline goes to and fro across the rows, in rows.</summary>
    private static double Across(Place[] ring) =>
        Enumerable.Range(0, ring.Length).Sum(i => Math.Abs(ring[(i + 1) % ring.Length].T - ring[i].T));

    private static double Underlay(FillPiece piece) =>
        Fills.Underlay.Edges(piece).Sum(Edge)
        + Rows(
            Fills.Underlay.CrossGround(piece),
            Fills.Underlay.CrossRows((FillShape)piece.Shape),
            -Fills.Underlay.StitchLength / 4.0 + PolygonSewer.RowEnd
        );

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
