using System.Collections.Concurrent;
using System.Collections.Immutable;
using Splitter.Artwork.Columns;
using Splitter.Geometry;

namespace Splitter.Cutting;

/// <summary>
/// Leaves out strips of fills that show nowhere, where they are a third layer or no more than a rest: rims and
/// overlaps, which lie under later shapes or where another part sews the same, and beside seams what lies under others.
/// The needle would go there and back for a row or two, and two layers hold and cover the cloth already, however parts
/// may miss each other.
/// </summary>
internal sealed class LooseStrips
{
    /// <summary>Strips are no wider than this, µm: a rim of 0.8 mm and an overlap beside it.</summary>
    private const int Widest = 2200;

    /// <summary>
    /// A strip that is no wider than this anywhere, µm, is left out whatever else lies there: a rim or an overlap of
    /// which other shapes have left but a rest. Its one to three rows need hidden ways there and back, which lie as
    /// thick as they do. Of the demo with its parts up to 0.4 mm off in random directions some 0.002 % less of what
    /// lies beside seams is covered in the mean.
    /// </summary>
    private const int Rest = 1300;

    /// <summary>
    /// Beside seams a third layer is left out however wide it is where it lies this far under later shapes, µm: as far
    /// as parts may be off, so that no gap shows along their edges.
    /// </summary>
    private const int Under = 400;

    /// <summary>Offsets stray by up to 10 µm each way.</summary>
    private const int Straying = 20;

    private readonly Piece?[][] pieces;

    /// <summary>Where each piece lies, or lay before something of it was left out.</summary>
    private readonly ImmutableArray<(int Part, int Shape, Box Bounds)> laid;

    /// <summary>The ground of pieces that was asked for.</summary>
    private readonly ConcurrentDictionary<(int Part, int Shape), Region> grounds = [];

    private LooseStrips(Piece?[][] pieces)
    {
        this.pieces = pieces;
        laid =
        [
            .. from part in pieces.Index()
            from piece in part.Item.Index()
            where piece.Item is not null
            select (part.Index, piece.Index, piece.Item.Bounds),
        ];
    }

    /// <param name="pieces">By hooping; for each the shapes' pieces, null where it has none.</param>
    /// <param name="band">Where parts overlap.</param>
    /// <param name="jobs">How many threads may work.</param>
    internal static void LeaveOut(UpperShapes uppers, Piece?[][] pieces, Region band, int jobs)
    {
        ImmutableArray<(int Part, int Shape)> fills =
        [
            .. from shape in Enumerable.Range(0, pieces[0].Length)
            from part in Enumerable.Range(0, pieces.Length)
            where pieces[part][shape] is FillPiece { IsCut: true }
            select (part, shape),
        ];
        var loose = InOrder.Select(fills, jobs, f => Loose((FillPiece)pieces[f.Part][f.Shape]!, f.Shape, uppers, band));
        var all = new LooseStrips(pieces);
        ImmutableArray<((int Part, int Shape) Fill, Region Strips)> found =
        [
            .. fills.Zip(loose).Where(s => !s.Second.IsEmpty),
        ];
        var (fill, strip) = (
            found.Select(f => pieces[f.Fill.Part][f.Fill.Shape]!.Bounds).ToArray(),
            found.Select(f => f.Strips.Bounds).ToArray()
        );
        // One after the other where they lie over each other: what is left out is no layer for the next.
        InOrder.Select(
            [.. Enumerable.Range(0, found.Length)],
            jobs,
            (one, earlier) => fill[one].Meets(strip[earlier]) || fill[earlier].Meets(strip[one]),
            i => all.LeaveOut(found[i].Fill.Part, found[i].Fill.Shape, found[i].Strips)
        );
    }

    /// <summary>
    /// Narrow ground that lies under later shapes, or beyond the piece's own; beside seams all that lies under later
    /// ones.
    /// </summary>
    private static Region Loose(FillPiece fill, int shape, UpperShapes uppers, Region band)
    {
        var (ground, box) = (Ground(fill), fill.Bounds);
        var narrow = Narrow(ground, Widest);
        var near = Polygons.Intersect(band.Near(box), ground);
        if (narrow.IsEmpty && near.IsEmpty)
            return narrow;
        var above = Polygons.Union(uppers.Grounds(shape, box).Select(g => g.Near(box)));
        var loose = Polygons.Subtract(narrow, Polygons.Subtract(fill.Core, above));
        return near.IsEmpty ? loose : Polygons.Union(loose, Polygons.Intersect(near, Polygons.Offset(above, -Under)));
    }

    /// <summary>Ground that is narrower than a width; corners of wider ground are not.</summary>
    private static Region Narrow(Region ground, int width) =>
        Polygons.Subtract(
            ground,
            Polygons.Offset(Polygons.Offset(ground, -width / 2.0), (width / 2.0) + Straying, Join.Mitre)
        );

    private FillPiece LeaveOut(int part, int shape, Region loose)
    {
        var fill = (FillPiece)pieces[part][shape]!;
        ImmutableArray<Region> others =
        [
            .. from other in laid
            where other.Bounds.Meets(loose.Bounds) && (other.Part, other.Shape) != (part, shape)
            select Polygons.Intersect(Ground(other.Part, other.Shape), loose) into common
            where !common.IsEmpty
            select common,
        ];
        var strips = Polygons.Union(Strip.Common(others), Polygons.Intersect(loose, Narrow(Ground(part, shape), Rest)));
        var rest = strips
            .Polygons.Where(p => p.Area > Bulk.Crumb)
            .Aggregate(fill, (left, strip) => Without(left, new([strip])));
        pieces[part][shape] = rest;
        grounds.TryRemove((part, shape), out _);
        return rest;
    }

    private Region Ground(int part, int shape) =>
        grounds.GetOrAdd((part, shape), of => Ground(pieces[of.Part][of.Shape]!));

    /// <summary>The piece without a strip, and as it was where a scrap would be left.</summary>
    private static FillPiece Without(FillPiece fill, Region strip)
    {
        var core = Polygons.Subtract(fill.Core, strip);
        if (Scrappy(core) > Scrappy(fill.Core))
            return fill;
        var even = Polygons.Subtract(fill.EvenRows, strip);
        return fill with
        {
            Core = core,
            EvenRows = even,
            OddRows = ReferenceEquals(fill.EvenRows, fill.OddRows) ? even : Polygons.Subtract(fill.OddRows, strip),
        };
    }

    private static int Scrappy(Region core) => core.Polygons.Count(p => p.Area < Scraps.Smallest);

    private static Region Ground(Piece piece) =>
        piece switch
        {
            FillPiece fill when ReferenceEquals(fill.EvenRows, fill.OddRows) => fill.EvenRows,
            FillPiece fill => Polygons.Union(fill.EvenRows, fill.OddRows),
            SatinPiece satin => OutlineColumns.Ground(satin.Columns),
            _ => Region.Empty,
        };
}
