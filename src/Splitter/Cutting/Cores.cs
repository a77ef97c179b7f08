using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Cutting;

/// <summary>What the hoopings sew of a fill that they share.</summary>
/// <param name="Pieces">By hooping; null where that is nothing.</param>
/// <param name="Strips">
/// Ground that parts have got from others, and the overlaps beside it, for this shape only: layers lie there as on any
/// overlap.
/// </param>
internal sealed record SharedFill(ImmutableArray<FillPiece?> Pieces, ImmutableArray<Strip> Strips)
{
    /// <summary>Of a shape that is no fill, or not shared.</summary>
    internal static readonly SharedFill None = new([], []);
}

/// <summary>
/// Shares a fill out among territories. Where a seam follows the fill's own edge, slivers of it are left on the other
/// side; they go to the neighbour, whose rows all reach over the seam that far anyway. So do scraps, where the
/// neighbour's field holds them and the drawing's layers allow it.
/// </summary>
internal sealed class Cores(
    Drawing drawing,
    UpperShapes uppers,
    PartGrounds grounds,
    ImmutableArray<Reach> reaches,
    VisibleEdges visible,
    Bulk bulk,
    Scraps scraps,
    EdgeRule edges
)
{
    /// <summary>
    /// Ground that snapping to whole micrometres leaves of nothing, µm²: a few µm along some centimetres.
    /// </summary>
    internal const double Nothing = 5000;

    /// <summary>For each hooping what it sews of a shape; null where that is nothing.</summary>
    internal SharedFill Of(int index)
    {
        var strips = new List<Strip>();
        var shape = drawing.Shapes[index];
        var fourth = bulk.Fourth(index);
        var (hidden, cores) = (new Region[grounds.Territories.Length], new Region[grounds.Territories.Length]);
        Array.Fill(hidden, Region.Empty);
        Array.Fill(cores, Region.Empty);
        for (var part = 0; part < cores.Length; part++)
        {
            var whole = Polygons.Intersect(shape.Footprint, grounds.Territories[part]);
            if (whole.IsEmpty)
                continue;
            hidden[part] = Polygons.Union(visible.Above(index, part), fourth.Near(grounds.FieldOf(part)));
            cores[part] = Polygons.Subtract(whole, hidden[part]);
            // What a seam or an edge cuts off a rim is not worth its ties.
            var covered = Covered(cores[part], index);
            cores[part] = Polygons.Subtract(cores[part], covered);
            hidden[part] = Polygons.Union(hidden[part], covered);
        }
        var shared = (Region[])cores.Clone();
        foreach (var reach in grounds.Reaches)
            GiveSlivers(reach, cores, shared);
        scraps.Give(index, shared);
        // Only an overlap and nothing of its own is no piece: the neighbour sews that ground anyway.
        return new([.. shared.Select((core, part) => core.IsEmpty ? null : Piece(part))], [.. strips]);

        FillPiece Piece(int part)
        {
            var (got, lost) = (
                Polygons.Subtract(shared[part], cores[part]),
                Polygons.Subtract(cores[part], shared[part])
            );
            ImmutableArray<Strip> beside = got.IsEmpty ? [] : [.. Beside(part, got, shared)];
            strips.AddRange(beside);
            for (var from = 0; from < cores.Length; from++)
                if (from != part && Polygons.Intersect(got, grounds.Territories[from]) is { IsEmpty: false } there)
                    strips.Add(new(part, from, there, there, there, there));
            return new()
            {
                Shape = shape,
                Hooping = part,
                IsCut = true,
                Core = shared[part],
                EvenRows = Rows(reaches[part].EvenRows, s => s.EvenRows),
                OddRows = Rows(reaches[part].OddRows, s => s.OddRows),
            };

            Region Rows(Region reach, Func<Strip, Region> strip) =>
                With(
                    shared[part],
                    Polygons.Subtract(
                        Polygons.Subtract(
                            Polygons.Union([Polygons.Intersect(shape.Footprint, reach), got, .. beside.Select(strip)]),
                            lost
                        ),
                        hidden[part]
                    )
                );
        }
    }

    /// <summary>Scraps that lie under other shapes, all but what no needle can sew on.</summary>
    private Region Covered(Region core, int shape) =>
        new([
            .. core.Polygons.Where(p =>
                p.Area < Scraps.Smallest
                && Polygons.Subtract(new Region([p]), Polygons.Union(uppers.Grounds(shape, p.Outer.Bounds))).Area
                    <= Bulk.Crumb
            ),
        ]);

    private void GiveSlivers(PartReach reach, Region[] cores, Region[] shared)
    {
        var (from, to) = (reach.Over, reach.Part);
        var share = edges == EdgeRule.Plain ? 1 : Overlaps.ShortShare;
        // Whoever takes slivers must not be one itself.
        if (shared[from].IsEmpty || !cores[to].Polygons.Any(p => Width(p) > 2 * reach.By))
            return;
        Region? strip = null;
        foreach (var polygon in shared[from].Polygons.Where(p => Width(p) <= 2 * share * reach.By))
        {
            var sliver = new Region([polygon]);
            strip ??= grounds.Past(reach, share);
            if (Polygons.Subtract(sliver, strip).Area > Nothing)
                continue;
            shared[from] = new Region(shared[from].Polygons.Remove(polygon));
            shared[to] = Polygons.Union(shared[to], sliver);
        }
    }

    /// <summary>The overlaps between ground that a part has got and what third parts sew beside it.</summary>
    private IEnumerable<Strip> Beside(int part, Region got, Region[] shared)
    {
        var near = Polygons.Offset(got, Scraps.Beside, Join.Mitre);
        var field = Region.Of(grounds.FieldOf(part));
        foreach (var reach in grounds.Reaches.Where(r => r.Part == part && shared[r.Over].Bounds.Meets(near.Bounds)))
        {
            var meeting = new Region([
                .. shared[reach.Over]
                    .Polygons.Where(p =>
                        near.Bounds.Meets(p.Outer.Bounds) && !Polygons.Intersect(near, new Region([p])).IsEmpty
                    ),
            ]);
            var (full, less) = (Past(reach.By), Past(reach.By * Overlaps.ShortShare));
            if (edges == EdgeRule.Plain)
                less = full;
            if (!full.IsEmpty)
                yield return part < reach.Over
                    ? new(part, reach.Over, full, less, full, less)
                    : new(part, reach.Over, less, full, full, less);

            Region Past(double by) =>
                Polygons.Intersect(Polygons.Intersect(Polygons.Offset(got, by, Join.Mitre), meeting), field);
        }
    }

    /// <summary>
    /// The ground of rows for a core: stretches that belong to it (not overlaps along an edge without any), and what it
    /// got from neighbours.
    /// </summary>
    private static Region With(Region core, Region rows)
    {
        var kept =
            rows.Polygons.Length == 1
                ? rows
                : new Region([.. rows.Polygons.Where(p => Polygons.Intersect(new Region([p]), core).Area > Nothing)]);
        return Polygons.Subtract(core, kept).Area > Nothing ? Polygons.Union(kept, core) : kept;
    }

    /// <summary>How wide a long and narrow polygon is, µm; of others about a third of their width.</summary>
    private static double Width(Polygon polygon) => 2 * polygon.Area / polygon.Rings.Sum(r => r.ToPolyline().Length);
}
