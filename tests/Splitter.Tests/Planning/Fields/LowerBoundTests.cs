using System.Collections.Immutable;
using CsCheck;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Planning.Fields.Covering;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fields;

/// <summary>
/// What is claimed of all plans must hold for those that a person lays, too. Such plans are planted here: fields that hang
/// together by as little ground as corners need, each with one other, however they lie to the rest, and artwork on them.
/// </summary>
public sealed class LowerBoundTests
{
    /// <summary>Stands for no plan that is known: the bound may go as high as it likes.</summary>
    private const int Unknown = 1000;

    /// <summary>An arm of 8 mm, halved, 1 mm inside both fields, on the tape's grid: µm.</summary>
    private const int Share = 6_200;

    /// <summary>Fields to the right of one before them, or below it, most of them nearly level with it.</summary>
    private static readonly Gen<(int X, int Y)[]> Trees = Gen.Select(
            Gen.Int[0, 1000],
            Gen.Bool,
            Gen.OneOf(Gen.Int[-40, 40], Gen.Int[-40, 40], Gen.Int[-400, 400]),
            (parent, below, along) => (parent, below, along)
        )
        .Array[0, 6]
        .Select(Planted);

    [Fact]
    public void IsNeverHigherThanAPlanThatAPersonMayLay() =>
        Trees.Holds(
            tree =>
            {
                var recipe = Samples.Recipe(Samples.Hoop(130, 180));
                var template = new FieldTemplate(recipe.Hoops[0], 0, Units.TapeStep) { Turns = [Turn.None] };
                ImmutableArray<Field> fields = [.. tree.Select(at => template.At(new(at.X, at.Y), Turn.None))];
                var drawing = Samples.Drawing(
                    Samples.Fill("all", Polygons.Union(fields.Select(f => Region.Of(template.Ground(f)))))
                );
                var task = CoverTask.Of(recipe, drawing, template, null) with { Turns = [Turn.None] };
                Assert.Single(Links.Groups(fields, task));
                Assert.InRange(LowerBound.Of(task, Unknown), 1, fields.Length);
            },
            cases: 60
        );

    /// <summary>Two fields above share much, two below next to nothing; those below are set by those above.</summary>
    [Fact]
    public void NothingIsProvenThatAListOfFieldsDisproves()
    {
        var hoop = Samples.Hoop(130, 180);
        var drawing = Samples.Drawing(Samples.Fill("a", 0, 0, 240, 0, 240, 166, 257, 166, 257, 345, 0, 345));
        var fewest = Samples.Recipe(hoop);
        fewest = fewest with { Fields = fewest.Fields with { Turns = [Turn.None], Clearance = 0 } };
        ImmutableArray<(double X, double Y)> centres = [(64.7, 89.7), (175.3, 89.7), (64.7, 255.3), (192.3, 255.3)];
        var byHand = fewest with
        {
            Fields = fewest.Fields with
            {
                Place = new ListedFields([
                    .. centres.Select(c => new ListedField(Point.FromMillimetres(c.X, c.Y), Turn.None)),
                ]),
            },
        };
        var laid = Planner.Plan(new(byHand, drawing), hoop);
        Assert.DoesNotContain(laid.Diagnostics, d => d.Severity == Severity.Error);
        Assert.Equal(4, laid.Value.Hoopings.Length);
        var task = CoverTask.Of(fewest, drawing, new(hoop, 0, Units.TapeStep) { Turns = [Turn.None] }, null);
        Assert.InRange(LowerBound.Of(task, Unknown), 1, 4);
    }

    /// <summary>Artwork far apart is reached by fields between: ceil((L - o) / (w - o)) of them for fields that share o.</summary>
    [Theory]
    [InlineData(100, 1)]
    [InlineData(285, 3)]
    [InlineData(295, 4)]
    [InlineData(1000, 11)]
    public void FieldsBetweenCount(int length, int fields)
    {
        var recipe = Samples.Recipe(Samples.Hoop(100.2, 100.2));
        var drawing = Samples.Drawing(
            Samples.Rectangle("left", 0, 0, 10, 10),
            Samples.Rectangle("right", length - 10, 0, 10, 10)
        );
        var task = CoverTask.Of(recipe, drawing, new(recipe.Hoops[0], 0, Units.TapeStep), null);
        Assert.Equal(fields, LowerBound.Of(task, Unknown));
    }

    /// <summary>Centres of fields, each by one before it.</summary>
    /// <param name="steps">How far along its side each is moved: tenths of a millimetre.</param>
    private static (int X, int Y)[] Planted((int Parent, bool Below, int Along)[] steps)
    {
        var fields = new List<(int X, int Y)> { (0, 0) };
        foreach (var (parent, below, along) in steps)
        {
            var (x, y) = fields[parent % fields.Count];
            var aside = along * Units.TapeStep;
            fields.Add(below ? (x + aside, y + 180_000 - Share) : (x + 130_000 - Share, y + aside));
        }
        return [.. fields];
    }
}
