using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;
using Splitter.Artwork.Columns;
using Splitter.Diagnostics;
using Splitter.Geometry;

namespace Splitter.Artwork.Sewing;

/// <summary>Cuts away what later opaque shapes hide, so that thread does not pile up.</summary>
internal sealed class Layers
{
    /// <summary>
    /// A column of which no more than this lies beside thread of earlier shapes needs no underlay, µm: no run has room
    /// there 0.6 mm inside both edges.
    /// </summary>
    private const int NarrowestFounded = 1200;

    /// <summary>
    /// The share of a column that may lie beside such thread without underlay: a headland of a long coast.
    /// </summary>
    private const double Unfounded = 0.1;

    private readonly ImmutableArray<Shape> drawn;
    private readonly STRtree<int> covers = new();

    /// <summary>For each shape what is sewn of it under later ones; from the last on.</summary>
    private readonly Region[] hidden;

    private Layers(ImmutableArray<Shape> drawn)
    {
        this.drawn = drawn;
        hidden = [.. drawn.Select(_ => Region.Empty)];
        for (var i = 0; i < drawn.Length; i++)
            if (drawn[i] is not RunShape)
                covers.Insert(ToEnvelope(drawn[i].Footprint.Bounds), i);
        covers.Build();
    }

    /// <summary>
    /// Shapes in the same order, each with what is visible of it and a rim under its neighbours. A hidden one is left
    /// out with a warning.
    /// </summary>
    /// <param name="jobs">How many threads may work.</param>
    internal static Result<ImmutableArray<Shape>> CutAway(Sheet sheet, ImmutableArray<Shape> shapes, int jobs = 1)
    {
        var layers = new Layers(shapes);
        var sewn = new Shape?[shapes.Length];
        foreach (var free in layers.FromTheTop())
        foreach (var (i, shape) in free.Zip(InOrder.Select(free, jobs, i => layers.Sewn(i, jobs))))
            sewn[i] = shape;
        var founded = InOrder.Select(
            [.. sewn.Index()],
            jobs,
            s => s.Item is null ? null : layers.Founded(s.Item, s.Index)
        );
        return Result.From<ImmutableArray<Shape>>([.. founded.OfType<Shape>()], layers.Unseen(sheet, sewn));
    }

    /// <summary>
    /// The shapes by number, in groups: over those of a group lie none but shapes of earlier groups.
    /// </summary>
    private IEnumerable<int[]> FromTheTop()
    {
        var depth = new int[drawn.Length];
        for (var i = drawn.Length - 1; i >= 0; i--)
            depth[i] = covers
                .Query(ToEnvelope(drawn[i].Footprint.Bounds))
                .Where(k => k > i)
                .Select(k => depth[k] + 1)
                .DefaultIfEmpty(0)
                .Max();
        return depth.Index().GroupBy(d => d.Item, d => d.Index).OrderBy(g => g.Key).Select(g => g.ToArray());
    }

    /// <param name="sewn">What is sewn of each of the shapes; null where nothing is.</param>
    private ImmutableArray<Diagnostic> Unseen(Sheet sheet, Shape?[] sewn)
    {
        ImmutableArray<(int Index, Shape Shape)> unseen = [.. drawn.Index().Where(s => sewn[s.Index] is null)];
        if (unseen.IsEmpty)
            return [];
        var (leaves, colours) = (new LeaveRules(sheet), ThreadNames.Colours(sheet));
        // A rule would leave another area of the same paint with it.
        var kept = sewn.OfType<Shape>().Select(shape => (shape.Place, shape.Thread)).ToHashSet();
        return
        [
            .. from it in unseen
            let shape = it.Shape
            let leave = kept.Contains((shape.Place, shape.Thread))
                ? null
                : leaves.For(shape.Place, colours.ElementAtOrDefault(shape.Thread) ?? "", shape.Id)
            select SewnGround.Shows(shape.Footprint, Above(it.Index))
                ? DrawingProblems.HardlyShows(shape.Place, shape.Id, leave)
                : DrawingProblems.Hidden(shape.Place, shape.Id, leave),
        ];
    }

    /// <summary>What later shapes hide of one, and more around it.</summary>
    private Region Above(int index) => Near(index, k => k > index, k => drawn[k].Footprint);

    /// <summary>
    /// Ground of shapes that are not lines, as far as it may touch a shape: one that is everywhere may have thousands
    /// of holes elsewhere.
    /// </summary>
    /// <param name="which">Of these, by number.</param>
    /// <param name="ground">What of each.</param>
    private Region Near(int index, Func<int, bool> which, Func<int, Region> ground)
    {
        var box = drawn[index].Footprint.Bounds;
        // The tree answers in its own order, and does not care: what is made of it is a union.
        return Polygons.Union(covers.Query(ToEnvelope(box)).Where(which).Select(k => ground(k).Near(box)));
    }

    private Shape? Sewn(int index, int jobs)
    {
        var shape = drawn[index];
        var cover = Polygons.Intersect(Above(index), shape.Footprint);
        if (cover.IsEmpty)
            return shape;
        var ground = SewnGround.Of(shape.Footprint, cover, Near(index, k => k > index, k => hidden[k]), jobs);
        if (ground.Sewn.IsEmpty)
            return null;
        switch (shape)
        {
            case FillShape fill:
                hidden[index] = ground.Hidden;
                return fill with { Footprint = ground.Sewn, Rims = ground.Rims, Deep = ground.Deep };
            case SatinShape satin:
                var outside = Outside();
                ImmutableArray<Column> columns =
                [
                    .. from whole in satin.Columns
                    from column in ColumnClipping.Visible(whole, outside)
                    where ReferenceEquals(column, whole) || column.Length >= SewnGround.NarrowestRest
                    select column,
                ];
                hidden[index] = Polygons.Intersect(OutlineColumns.Ground(columns), cover);
                return columns.IsEmpty ? null : satin with { Columns = columns, Footprint = ground.Sewn };
            case RunShape run:
                var beside = Outside();
                ImmutableArray<Polyline> lines =
                [
                    .. run.Lines.SelectMany(l => beside.Outside(l)).Where(l => l.Length >= SewnGround.NarrowestRest),
                ];
                return lines.IsEmpty ? null : run with { Lines = lines, Footprint = ground.Sewn };
            default:
                throw new InvalidOperationException($"Nothing is known to cut away of {shape.GetType().Name}.");
        }

        // What is left of hidden ground where nothing shows is not sewn either: the footprint does not have it.
        PathClipping Outside() =>
            new(
                Polygons.Union(
                    ground.Left,
                    Polygons.Subtract(Polygons.Subtract(shape.Footprint, ground.Left), ground.Sewn)
                )
            );
    }

    /// <summary>
    /// The shape with underlay only where it does not lie on thread of earlier ones, which holds the cloth already.
    /// </summary>
    private Shape Founded(Shape shape, int index)
    {
        var laid = Near(index, k => k < index, k => hidden[k]);
        return shape switch
        {
            FillShape fill => fill with { Laid = Polygons.Intersect(fill.Footprint, laid) },
            SatinShape satin when IsFounded(satin.Footprint, laid) => satin with
            {
                Style = satin.Style with { Underlay = [] },
            },
            _ => shape,
        };
    }

    /// <summary>Hardly any of it lies beside other thread, what is narrow not counted.</summary>
    private static bool IsFounded(Region ground, Region laid)
    {
        if (Polygons.Intersect(ground, laid).IsEmpty)
            return false;
        var wide = Polygons.Offset(Polygons.Subtract(ground, laid), -NarrowestFounded / 2);
        return Polygons.Offset(wide, NarrowestFounded / 2).Area <= Unfounded * ground.Area;
    }

    private static Envelope ToEnvelope(Box box) => new(box.Left, box.Right, box.Top, box.Bottom);
}
