using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Cutting;

/// <summary>Divides the drawing among the hoopings of a plan.</summary>
internal static class Cutter
{
    /// <summary>Pieces by hooping, then in the drawing's sewing order.</summary>
    internal static ImmutableArray<Piece> Cut(Drawing drawing, Plan plan, OverlapRules overlap)
    {
        var cores = drawing
            .Shapes.Select((s, i) => s is FillShape && plan.Owners[i] is null ? Cores.Of(s, plan, overlap.Edges) : [])
            .ToImmutableArray();
        var pieces = ImmutableArray.CreateBuilder<Piece>();
        for (var hooping = 0; hooping < plan.Hoopings.Length; hooping++)
        {
            var reach = Reach.Of(plan, hooping, overlap.Edges);
            var lines = new PathClipping(reach.Lines);
            var ground = new PathClipping(Region.Of(plan.Hoopings[hooping].Ground));
            for (var i = 0; i < drawing.Shapes.Length; i++)
            {
                if (plan.Owners[i] == hooping)
                    pieces.Add(Whole(drawing.Shapes[i], hooping));
                else if (plan.Owners[i] is null)
                {
                    var core = cores[i].Length == 0 ? Region.Empty : cores[i][hooping];
                    if (Cut(drawing.Shapes[i], hooping, core, reach, lines, ground) is { } piece)
                        pieces.Add(piece);
                }
            }
        }
        return pieces.ToImmutable();
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

    /// <summary>What the hooping sews of a shape that seams cut; null when that is nothing.</summary>
    private static Piece? Cut(
        Shape shape,
        int hooping,
        Region core,
        Reach reach,
        PathClipping lines,
        PathClipping ground
    )
    {
        if (!shape.Footprint.Bounds.Meets(reach.Lines.Bounds))
            return null;
        switch (shape)
        {
            case FillShape:
                // Only an overlap and nothing of its own: the neighbour sews that ground anyway.
                return core.IsEmpty
                    ? null
                    : new FillPiece
                    {
                        Shape = shape,
                        Hooping = hooping,
                        IsCut = true,
                        Core = core,
                        EvenRows = Cores.With(core, Polygons.Intersect(shape.Footprint, reach.EvenRows)),
                        OddRows = Cores.With(core, Polygons.Intersect(shape.Footprint, reach.OddRows)),
                    };
            case SatinShape satin:
                ImmutableArray<Column> columns =
                [
                    // A column is divided by its middle line; its rungs may stick out of the field beside it.
                    .. satin
                        .Columns.SelectMany(c => ColumnClipping.Keep(c, lines, inside: true))
                        .SelectMany(c => ColumnClipping.Within(c, ground)),
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
                ImmutableArray<Polyline> paths = [.. run.Lines.SelectMany(line => lines.Inside(line))];
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
}
