using System.Collections.Immutable;
using CsCheck;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Fields;
using Splitter.Planning.Fields.Covering;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fields;

/// <summary>
/// A lower bound that is higher than the number of fields of some cover is wrong. Covers are planted here: rows of fields
/// that share what corners need, by the sizes that the recipe's rules give and nothing else, and artwork inside them. No
/// rule of the search about what a field covers has a part in it.
/// </summary>
public sealed class PointBoundTests
{
    /// <summary>Stands for no cover that is known: the bound may go as high as it likes.</summary>
    private const int Unknown = 1000;

    /// <summary>How far stitches reach past the artwork here, µm: no pull, and half a step of the tape on each side.</summary>
    private const int Reach = Units.TapeStep;

    private static readonly Gen<(Recipe Recipe, Drawing Drawing, int Fields)> Planted =
        from width in Gen.Int[60, 140]
        from height in Gen.Int[60, 140]
        from columns in Gen.Int[1, 3]
        from rows in Gen.Int[1, 3]
        from more in Gen.Int[0, 40].Select(tenths => tenths * Units.TapeStep)
        from moves in Gen.Int[-100, 100].Select(tenths => tenths * Units.TapeStep).Array[3]
        from solid in Gen.Bool
        from boxes in Gen.Select(
            Gen.Double[0, 1],
            Gen.Double[0, 1],
            Gen.Double[0, 1],
            Gen.Double[0, 1],
            (x, y, w, h) => (x, y, w, h)
        ).Array[1, 12]
        select Plant((width, height), columns, rows, more, moves, solid ? [(0, 0, 1, 1)] : boxes);

    [Fact]
    public void IsNeverHigherThanACoverHasFields() =>
        Planted.Holds(
            t =>
            {
                var task = CoverTask.Of(t.Recipe, t.Drawing, new(t.Recipe.Hoops[0], 0, Reach), null);
                Assert.InRange(new PointBound(task).Of(Unknown, 2_000_000), 1, t.Fields);
            },
            cases: 60
        );

    /// <summary>Of boxes of 60 mm that begin every 70 mm a field of 100 mm holds one.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(5)]
    public void BoxesThatStayWholeTakeAFieldEach(int boxes)
    {
        var task = new CoverTask(
            [],
            [.. Enumerable.Range(0, boxes).Select(i => new Box(i * 70_000, 0, (i * 70_000) + 60_000, 60_000))],
            new FieldTemplate(Samples.Hoop(100, 100), 0, 0),
            [Turn.None],
            null,
            [],
            []
        );
        Assert.Equal(boxes, new PointBound(task).Of(Unknown));
    }

    /// <summary>A bar that takes four fields, of which one is fixed: two are known, and no more is asked for.</summary>
    [Theory]
    [InlineData(2, 2)]
    [InlineData(3, 3)]
    [InlineData(Unknown, 4)]
    public void NoMoreIsProvedThanIsKnown(int known, int bound)
    {
        var template = new FieldTemplate(Samples.Hoop(100, 100), 0, 0);
        var first = template.At(Point.FromMillimetres(50, 40), Turn.None);
        var task = new CoverTask(
            [Samples.Ground(0, 0, 390, 0, 390, 80, 0, 80)],
            [],
            template,
            [Turn.None],
            null,
            [first],
            []
        );
        Assert.Equal(bound, new PointBound(task).Of(known));
    }

    /// <summary>Rows of fields, each row moved against the others, and boxes as shares of all their ground.</summary>
    private static (Recipe, Drawing, int) Plant(
        (int Width, int Height) field,
        int columns,
        int rows,
        int more,
        int[] moves,
        (double X, double Y, double Width, double Height)[] boxes
    )
    {
        var hoop = Samples.Hoop(field.Width, field.Height);
        var recipe = Samples.Recipe(hoop);
        // A corner of full arms, 1 mm inside both fields, on the tape's grid: less than neighbours in a row share here.
        var share = recipe.Registration.CornerArm + (2 * Units.Millimetre) + (4 * Units.TapeStep) + more;
        ImmutableArray<Box> grounds =
        [
            .. from row in Enumerable.Range(0, rows)
            from column in Enumerable.Range(0, columns)
            let left = (column * (hoop.Width - share)) + moves[row]
            let top = row * (hoop.Height - share)
            select new Box(left, top, left + hoop.Width, top + hoop.Height).Grown(-Reach),
        ];
        var all = Box.Around(grounds.SelectMany(g => new Point[] { new(g.Left, g.Top), new(g.Right, g.Bottom) }));
        var ground = Polygons.Union(grounds.Select(Region.Of));
        var shapes = boxes
            .Select(b => new Box(
                all.Left + (int)(b.X * all.Width),
                all.Top + (int)(b.Y * all.Height),
                all.Left + (int)(b.X * all.Width) + Units.Millimetre + (int)(b.Width * all.Width),
                all.Top + (int)(b.Y * all.Height) + Units.Millimetre + (int)(b.Height * all.Height)
            ))
            .Select(b => Polygons.Intersect(ground, Region.Of(b)))
            .Where(region => !region.IsEmpty)
            .Select((region, i) => (Shape)Samples.Fill($"s{i}", region))
            .ToArray();
        return shapes.Length == 0
            ? Plant(field, columns, rows, more, moves, [(0, 0, 1, 1)])
            : (recipe, Samples.Drawing(shapes), grounds.Length);
    }
}
