using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Artwork.Columns;
using Splitter.Geometry;

namespace Splitter.Cutting;

/// <summary>
/// Keeps the cloth supple at seams: no more than three pieces lie on each other because parts overlap. A second part
/// there sews only what it has on top; and what lies under others anyway is left out where it would be the fourth.
/// Nothing that shows is touched, so that the misfit that the overlap is for stays covered.
/// </summary>
internal sealed class Bulk
{
    /// <summary>
    /// Less than this, µm², no needle can sew on: a thread's width each way. What is cut off so lies within an overlap,
    /// where another part sews.
    /// </summary>
    internal const double Crumb = 160_000;

    private readonly Drawing drawing;
    private readonly UpperShapes uppers;
    private readonly ImmutableArray<int?> owners;
    private readonly Region crossed;

    /// <summary>For each shape the ground near seams that it hides; nothing for lines, which hide none.</summary>
    private readonly ImmutableArray<Region> covers;

    private readonly Region?[] fourth;
    private readonly Region?[] doubled;

    /// <param name="jobs">How many threads may work.</param>
    internal Bulk(
        Drawing drawing,
        UpperShapes uppers,
        ImmutableArray<int?> owners,
        ImmutableArray<Strip> strips,
        int jobs
    )
    {
        (this.drawing, this.uppers, this.owners) = (drawing, uppers, owners);
        fourth = new Region?[drawing.Shapes.Length];
        doubled = new Region?[drawing.Shapes.Length];
        Overlaps = Polygons.Union(strips.Select(s => s.Full));
        crossed = Polygons.Union(strips.GroupBy(s => s.Over).Select(g => Strip.Common([.. g.Select(s => s.Full)])));
        covers = InOrder.Select(
            drawing.Shapes,
            jobs,
            s => s is RunShape ? Region.Empty : Polygons.Intersect(s.Footprint, Overlaps)
        );
    }

    /// <summary>Where parts sew beyond their own ground.</summary>
    internal Region Overlaps { get; }

    /// <param name="pieces">By hooping; for each the shapes' pieces in sewing order, null where it has none.</param>
    /// <param name="jobs">How many threads may work.</param>
    internal void Thin(Piece?[][] pieces, int jobs)
    {
        int[] shapes = [.. Enumerable.Range(0, drawing.Shapes.Length).Where(s => drawing.Shapes[s] is FillShape)];
        int[] columns = [.. Enumerable.Range(0, covers.Length).Where(s => !Doubled(s, pieces).IsEmpty)];
        var thinned = InOrder.Select(shapes, jobs, shape => Thinned(shape, columns, pieces));
        foreach (var (shape, column) in shapes.Zip(thinned))
            for (var hooping = 0; hooping < pieces.Length; hooping++)
                pieces[hooping][shape] = column[hooping];
    }

    /// <summary>By hooping the pieces of a fill, as they are to be beside those of other shapes as they are.</summary>
    /// <param name="columns">The shapes that two parts sew of, in columns.</param>
    private Piece?[] Thinned(int shape, int[] columns, Piece?[][] pieces)
    {
        Piece?[] column = [.. pieces.Select(part => part[shape])];
        var underDoubled = UnderDoubled(shape, columns, pieces);
        if (covers[shape].IsEmpty && underDoubled.IsEmpty)
            return column;
        var (own, thinned) = ((FillShape)drawing.Shapes[shape], Polygons.Union(Fourth(shape), underDoubled));
        for (var hooping = 0; hooping < column.Length; hooping++)
            if (column[hooping] is FillPiece fill)
            {
                var thin = Without(thinned, fill);
                column[hooping] = fill.IsCut ? OnTop(thin, own, shape, pieces) : thin;
            }
        return column;
    }

    /// <summary>
    /// What lies of a shape under columns that two parts sew and under one more shape: the fourth layer.
    /// </summary>
    private Region UnderDoubled(int shape, int[] columns, Piece?[][] pieces)
    {
        var (own, found) = (drawing.Shapes[shape].Footprint, new List<Region>());
        foreach (var upper in columns.Where(upper => upper > shape))
        {
            var twice = Doubled(upper, pieces);
            if (!twice.Bounds.Meets(own.Bounds))
                continue;
            twice = Polygons.Intersect(twice, own);
            for (var other = shape + 1; other < drawing.Shapes.Length; other++)
                if (other != upper && drawing.Shapes[other] is not RunShape)
                    found.Add(Polygons.Intersect(twice, drawing.Shapes[other].Footprint));
        }
        return Polygons.Union(found);
    }

    /// <summary>
    /// The piece with an overlap that does not lie under the part's own shapes, nor on those that earlier parts have
    /// sewn, nor under columns that two parts sew, nor where a gap between parts would be hidden deep under others.
    /// </summary>
    private FillPiece OnTop(FillPiece fill, FillShape own, int shape, Piece?[][] pieces)
    {
        var overlap = Polygons.Subtract(Polygons.Union(fill.EvenRows, fill.OddRows), fill.Core);
        var above = new List<Region> { Polygons.Intersect(own.Deep, overlap) };
        foreach (var upper in uppers.Of(shape))
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
            above.Add(Polygons.Intersect(Doubled(upper, pieces), overlap));
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
    /// Where two parts sew a satin shape. Columns are divided by their middle line, so this reaches half their width
    /// beyond where strips say that parts overlap.
    /// </summary>
    private Region Doubled(int shape, Piece?[][] pieces) =>
        doubled[shape] ??= Strip.Common([
            .. pieces
                .Select(part => part[shape])
                .OfType<SatinPiece>()
                .Where(p => p.IsCut)
                .Select(p => OutlineColumns.Ground(p.Columns)),
        ]);

    /// <summary>
    /// Of what the shapes above one hide of it, the ground where it would be the fourth: under two others along a seam,
    /// under one where seams meet. Of a shape that is sewn whole only what lies under one that is not. Rims are as bad
    /// under one that two parts sew, since rows of both end there; one of the two is the rim's own part, or lies as
    /// exactly on it.
    /// </summary>
    internal Region Fourth(int shape) => fourth[shape] ??= FindFourth(shape);

    private Region FindFourth(int shape)
    {
        if (covers[shape].IsEmpty)
            return Region.Empty;
        ImmutableArray<(int Shape, Region Ground)> above =
        [
            .. from upper in uppers.Of(shape)
            let ground = Polygons.Intersect(covers[upper], covers[shape])
            where !ground.IsEmpty
            select (upper, ground),
        ];
        var twice =
            from pair in BoxPairs.Meeting(above.Select(a => a.Ground.Bounds))
            let one = above[pair.A]
            let other = above[pair.B]
            where IsCut(shape) || IsCut(one.Shape) || IsCut(other.Shape)
            select Polygons.Intersect(one.Ground, other.Ground);
        var crossing = IsCut(shape)
            ? Polygons.Intersect(Polygons.Union(above.Select(a => a.Ground)), crossed)
            : Region.Empty;
        var rims = drawing.Shapes[shape] is FillShape fill
            ? Polygons.Intersect(fill.Rims, Polygons.Union(above.Where(a => IsCut(a.Shape)).Select(a => a.Ground)))
            : Region.Empty;
        return Polygons.Union([.. twice, crossing, rims]);
    }

    private bool IsCut(int shape) => owners[shape] is null;

    private static FillPiece Without(Region fourth, FillPiece fill)
    {
        if (Polygons.Intersect(fourth, fill.EvenRows).IsEmpty && Polygons.Intersect(fourth, fill.OddRows).IsEmpty)
            return fill;
        var core = Polygons.Subtract(fill.Core, fourth);
        var gone = Polygons.Union(fourth, new Region([.. core.Polygons.Where(p => p.Area < Crumb)]));
        var even = Polygons.Subtract(fill.EvenRows, gone);
        return fill with
        {
            IsCut = true,
            Core = Polygons.Subtract(fill.Core, gone),
            EvenRows = even,
            OddRows = ReferenceEquals(fill.EvenRows, fill.OddRows) ? even : Polygons.Subtract(fill.OddRows, gone),
        };
    }
}
