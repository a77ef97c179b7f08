using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Cutting;

/// <summary>
/// Keeps underlay off ground that has thread enough: what lies under later shapes, what lies on thread of earlier ones,
/// which holds the cloth already, and what another part sews too. It is not worth its stitches where ground is narrow,
/// either.
/// </summary>
internal static class BareGround
{
    /// <summary>
    /// Underlay is sewn where ground is at least this wide, µm: in less, its two runs would lie side by side, 0.6 mm
    /// inside either edge. Common practice, no source.
    /// </summary>
    private const int Narrowest = 2400;

    /// <param name="pieces">By hooping; for each the shapes' pieces, null where it has none.</param>
    /// <param name="jobs">How many threads may work.</param>
    internal static void Find(Piece?[][] pieces, int jobs)
    {
        ImmutableArray<(int Part, int Shape, FillPiece Fill)> fills =
        [
            .. from shape in Enumerable.Range(0, pieces[0].Length)
            from part in Enumerable.Range(0, pieces.Length)
            let fill = pieces[part][shape] as FillPiece
            where fill is not null
            select (part, shape, fill),
        ];
        var bare = InOrder.Select(fills, jobs, f => Bare(f.Fill, f.Shape, pieces));
        foreach (var ((part, shape, fill), ground) in fills.Zip(bare))
            pieces[part][shape] = fill with { Bare = ground };
    }

    private static Region Bare(FillPiece fill, int shape, Piece?[][] pieces)
    {
        var others =
            from part in pieces
            let other = part[shape] as FillPiece
            where other is not null && other.Hooping != fill.Hooping && other.Bounds.Meets(fill.Core.Bounds)
            from rows in new[] { other.EvenRows, other.OddRows }
            select rows;
        var laid = fill.Shape is FillShape own ? new[] { own.Rims, own.Laid, own.Deep } : [];
        // Of what lies all over a large ground, what lies near its piece.
        var near = laid.Concat(others).Select(ground => ground.Near(fill.Core.Bounds));
        var bare = Polygons.Subtract(fill.Core, Polygons.Union(near));
        return Polygons.Intersect(Polygons.Offset(Polygons.Offset(bare, -Narrowest / 2), Narrowest / 2), bare);
    }
}
