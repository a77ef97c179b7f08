using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Cutting;

/// <summary>
/// Keeps the cloth supple at seams: no more than three pieces lie on each other because parts overlap. A second part there
/// sews only what it has on top; and what lies under others anyway is left out where it would be the fourth. Nothing that
/// shows is touched, so that the misfit that the overlap is for stays covered.
/// </summary>
internal sealed class Bulk
{
    private readonly Drawing drawing;
    private readonly Region single;
    private readonly Region crossed;

    /// <summary>For each shape the ground near seams that it hides; nothing for lines, which hide none.</summary>
    private readonly ImmutableArray<Region> covers;

    internal Bulk(Drawing drawing, ImmutableArray<Strip> strips)
    {
        this.drawing = drawing;
        single = Polygons.Union(strips.Select(s => s.Full));
        crossed = Polygons.Union(strips.GroupBy(s => s.Over).Select(g => Strip.Common([.. g.Select(s => s.Full)])));
        covers =
        [
            .. drawing.Shapes.Select(s => s is RunShape ? Region.Empty : Polygons.Intersect(s.Footprint, single)),
        ];
    }

    /// <param name="pieces">By hooping; for each the shapes' pieces in sewing order, null where it has none.</param>
    internal void Thin(Piece?[][] pieces)
    {
        for (var shape = 0; shape < drawing.Shapes.Length; shape++)
        {
            if (covers[shape].IsEmpty || drawing.Shapes[shape] is not FillShape)
                continue;
            var hidden = Hidden(shape);
            for (var hooping = 0; hooping < pieces.Length; hooping++)
                if (pieces[hooping][shape] is FillPiece { IsCut: true } fill)
                    pieces[hooping][shape] = Without(hidden, OnTop(fill, shape, pieces));
        }
    }

    /// <summary>
    /// The piece with an overlap that does not lie under the part's own shapes, nor on those that earlier parts have sewn.
    /// </summary>
    private FillPiece OnTop(FillPiece fill, int shape, Piece?[][] pieces)
    {
        var overlap = Polygons.Subtract(Polygons.Union(fill.EvenRows, fill.OddRows), fill.Core);
        var above = new List<Region>();
        for (var upper = shape + 1; upper < covers.Length && !overlap.IsEmpty; upper++)
        {
            if (!covers[upper].Bounds.Meets(overlap.Bounds))
                continue;
            for (var part = 0; part <= fill.Hooping; part++)
                if (pieces[part][upper] is FillPiece over)
                    above.AddRange(
                        (part == fill.Hooping ? new[] { over.EvenRows, over.OddRows } : [over.Core]).Select(ground =>
                            Polygons.Intersect(ground, overlap)
                        )
                    );
                else if (pieces[part][upper] is not null)
                    above.Add(Polygons.Intersect(covers[upper], overlap));
        }
        var hidden = Polygons.Union(above);
        return hidden.IsEmpty
            ? fill
            : fill with
            {
                EvenRows = Polygons.Subtract(fill.EvenRows, hidden),
                OddRows = Polygons.Subtract(fill.OddRows, hidden),
            };
    }

    /// <summary>
    /// What the shapes above one hide of it, and of that the ground where it would be the fourth: under two others along a
    /// seam, under one where seams meet.
    /// </summary>
    private (Region Under, Region Fourth) Hidden(int shape)
    {
        var (under, twice) = (Region.Empty, new List<Region>());
        for (var upper = shape + 1; upper < covers.Length; upper++)
        {
            var cover = Polygons.Intersect(covers[upper], covers[shape]);
            if (cover.IsEmpty)
                continue;
            twice.Add(Polygons.Intersect(under, cover));
            under = Polygons.Union(under, cover);
        }
        return (under, Polygons.Union([.. twice, Polygons.Intersect(under, crossed)]));
    }

    private static FillPiece Without((Region Under, Region Fourth) hidden, FillPiece fill)
    {
        if (hidden.Fourth.IsEmpty)
            return fill;
        var core = Polygons.Subtract(fill.Core, hidden.Fourth);
        // What is cut off so, and lies hidden too, is not worth its ties.
        var scraps = new Region([
            .. core.Polygons.Where(p =>
                p.Area < Cores.Scrap && Polygons.Subtract(new Region([p]), hidden.Under).Area <= Cores.Nothing
            ),
        ]);
        var gone = Polygons.Union(hidden.Fourth, scraps);
        return fill with
        {
            Core = Polygons.Subtract(fill.Core, gone),
            EvenRows = Polygons.Subtract(fill.EvenRows, gone),
            OddRows = Polygons.Subtract(fill.OddRows, gone),
        };
    }
}
