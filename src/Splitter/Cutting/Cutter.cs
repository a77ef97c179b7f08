using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Cutting.Tapes;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Cutting;

/// <summary>Divides the drawing among the hoopings of a plan.</summary>
internal static class Cutter
{
    /// <summary>Pieces by hooping, then in the drawing's sewing order.</summary>
    /// <param name="jobs">How many threads may work.</param>
    internal static ImmutableArray<Piece> Cut(Drawing drawing, Plan plan, OverlapRules overlap, int jobs = 1)
    {
        var grounds = Crowds.Parted(new PartGrounds(plan), jobs);
        var strips = Strip.Of(grounds, overlap.Edges, jobs);
        var reaches = grounds
            .Territories.Select((territory, part) => Reach.Of(territory, strips.Where(s => s.Part == part)))
            .ToImmutableArray();
        if (drawing.IsStitched)
            return TapeCutter.Cut(drawing, plan, grounds.Territories, reaches);
        var uppers = new UpperShapes(drawing);
        var bulk = new Bulk(drawing, uppers, plan.Owners, strips, jobs);
        var cores = new Cores(
            drawing,
            uppers,
            grounds,
            reaches,
            new VisibleEdges(drawing, plan, grounds),
            bulk,
            new Scraps(drawing, plan, grounds),
            overlap.Edges
        );
        var fills = InOrder.Select(
            [.. Enumerable.Range(0, drawing.Shapes.Length)],
            jobs,
            i => drawing.Shapes[i] is FillShape && plan.Owners[i] is null ? cores.Of(i) : SharedFill.None
        );
        var (lines, columns) = (new LineShares(reaches, r => r.Lines), new LineShares(reaches, r => r.Columns));
        var pieces = new Piece?[plan.Hoopings.Length][];
        for (var hooping = 0; hooping < pieces.Length; hooping++)
        {
            var ground = new PathClipping(Region.Of(plan.Hoopings[hooping].Ground));
            pieces[hooping] = new Piece?[drawing.Shapes.Length];
            for (var i = 0; i < drawing.Shapes.Length; i++)
            {
                var shape = drawing.Shapes[i];
                pieces[hooping][i] =
                    plan.Owners[i] == hooping ? Whole(shape, hooping)
                    : plan.Owners[i] is not null || !shape.Footprint.Bounds.Meets(reaches[hooping].Lines.Bounds) ? null
                    : shape is FillShape ? fills[i].Pieces[hooping]
                    : Lines(shape, hooping, shape is SatinShape ? columns : lines, ground);
            }
        }
        ImmutableArray<Strip> got = [.. fills.SelectMany(f => f.Strips)];
        var thinned = got.IsEmpty ? bulk : new Bulk(drawing, uppers, plan.Owners, [.. strips, .. got], jobs);
        thinned.Thin(pieces, jobs);
        LooseStrips.LeaveOut(uppers, pieces, thinned.Overlaps, jobs);
        BareGround.Find(pieces, jobs);
        return
        [
            .. from part in pieces
            from piece in part
            where piece is not null and not FillPiece { Core.IsEmpty: true }
            select piece,
        ];
    }

    private static Piece Whole(Shape shape, int hooping) =>
        shape switch
        {
            FillShape => new FillPiece
            {
                Shape = shape,
                Hooping = hooping,
                Core = shape.Footprint,
                EvenRows = shape.Footprint,
                OddRows = shape.Footprint,
            },
            SatinShape satin => new SatinPiece
            {
                Shape = shape,
                Hooping = hooping,
                Columns = satin.Columns,
            },
            RunShape run => new RunPiece
            {
                Shape = shape,
                Hooping = hooping,
                Lines = run.Lines,
            },
            _ => throw new InvalidOperationException($"No piece is known for {shape.GetType().Name}."),
        };

    /// <summary>What the hooping sews of columns or lines that seams cut; null when that is nothing.</summary>
    private static Piece? Lines(Shape shape, int hooping, LineShares lines, PathClipping ground)
    {
        switch (shape)
        {
            case SatinShape satin:
                ImmutableArray<Column> columns =
                [
                    // A column is divided by its middle line; its rungs may stick out of the field beside it.
                    .. from whole in satin.Columns
                    from column in ColumnClipping.Keep(whole, lines.Of(hooping), inside: true)
                    where lines.IsWorthSewing(hooping, MiddleOf(whole), MiddleOf(column))
                    from held in ColumnClipping.Within(column, ground)
                    select held,
                ];
                return columns.IsEmpty
                    ? null
                    : new SatinPiece
                    {
                        Shape = shape,
                        Hooping = hooping,
                        IsCut = true,
                        Columns = columns,
                    };
            case RunShape run:
                ImmutableArray<Polyline> paths =
                [
                    .. from whole in run.Lines
                    from line in lines.Of(hooping).Inside(whole)
                    where lines.IsWorthSewing(hooping, whole, line)
                    select line,
                ];
                return paths.IsEmpty
                    ? null
                    : new RunPiece
                    {
                        Shape = shape,
                        Hooping = hooping,
                        IsCut = true,
                        Lines = paths,
                    };
            default:
                throw new InvalidOperationException($"No piece is known for {shape.GetType().Name}.");
        }
    }

    private static Polyline MiddleOf(Column column) => new([.. column.Rungs.Select(r => r.Middle)]);
}
