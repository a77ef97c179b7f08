using System.Collections.Immutable;
using CsCheck;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Planning.Fields.Covering;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fields;

/// <summary>Which way fields lie, and what a throat with little room forbids.</summary>
public sealed class TurningTests
{
    private static readonly ImmutableArray<Turn> All = [Turn.None, Turn.Quarter, Turn.Half, Turn.ThreeQuarters];

    private static readonly Gen<ImmutableArray<Turn>> AllowedTurns = Gen.Int[1, 15]
        .Select(bits => All.Where((_, i) => (bits >> i & 1) == 1).ToImmutableArray());

    private static readonly Gen<HoopSide> Sides = Gen.Int[0, 3].Select(side => (HoopSide)side);

    /// <summary>The cloth on the throat's side is measured by the field's own frame, not by the code's table of sides.</summary>
    [Fact]
    public void TheTurnWithLeastClothInTheThroatIsTaken()
    {
        var fields =
            from x in Gen.Int[-50, 450]
            from y in Gen.Int[-50, 450]
            from w in Gen.Int[60, 200]
            from h in Gen.Int[60, 200]
            from square in Gen.Bool
            from turn in Gen.Int[0, 3]
            select (X: x, Y: y, W: w, H: square ? w : h, Turn: All[turn]);
        (from f in fields from turns in AllowedTurns from side in Sides select (f, turns, side)).Holds(s =>
        {
            var recipe = Recipe(Samples.Hoop(s.f.W, s.f.H), s.turns, new(s.side, null));
            var template = new FieldTemplate(recipe.Hoops[0], 0, 0);
            var field = template.At(Point.FromMillimetres(s.f.X, s.f.Y), s.f.Turn);
            var alike = s.turns.Select(t => template.At(field.Centre, t)).Where(f => f.Bounds == field.Bounds).ToList();
            if (alike.Count == 0)
                return;
            var best = Turning.Of(recipe, recipe.Hoops[0]).Best(field);
            Assert.Equal(alike.OrderBy(f => Measured(recipe, f)).ThenBy(f => f.Turn).First().Turn, best);
            Assert.Equal(
                Measured(recipe, field with { Turn = best }),
                Turning.InThroat(recipe, template.At(field.Centre, best))
            );
        });
    }

    /// <summary>Every field of a plan lies as brute force would lay it, and none leaves more cloth than has room.</summary>
    [Fact]
    public void FieldsOfPlansLieAsBruteForceWouldLayThem()
    {
        var planned = 0;
        Cases()
            .Holds(
                s =>
                {
                    var found = FieldPlacer.Place(s.Recipe, s.Drawing, s.Recipe.Hoops[0]);
                    if (!found.TryGet(out var layouts))
                    {
                        Assert.All(found.Diagnostics, d => Assert.Equal("SPL3020", d.Code));
                        return;
                    }
                    planned++;
                    foreach (var field in layouts.SelectMany(l => l.Fields))
                    {
                        var least = s
                            .Recipe.Fields.Turns.Select(t => new Field(field.Hoop, field.Centre, t, field.Clearance))
                            .Where(f => f.Bounds == field.Bounds)
                            .Min(f => Measured(s.Recipe, f));
                        Assert.Contains(field.Turn, s.Recipe.Fields.Turns);
                        Assert.Equal(least, Measured(s.Recipe, field));
                        Assert.True(least <= field.Hoop.Throat!.Room);
                    }
                },
                cases: 15
            );
        Assert.InRange(planned, 5, int.MaxValue);
    }

    /// <summary>More ways to lie never ask for more fields, and every bound holds for the plan with all ways.</summary>
    [Fact]
    public void MoreTurnsNeverTakeMoreFields() =>
        Cases()
            .Holds(
                s =>
                {
                    var fewer = Found(s.Recipe, s.Drawing);
                    var more = Found(With(s.Recipe, All), s.Drawing);
                    Assert.True(
                        more.Count <= fewer.Count,
                        $"{more.Count} fields with all turns, {fewer.Count} with some"
                    );
                    Assert.True(more.Bound <= more.Count && fewer.Bound <= fewer.Count);
                    // A throat with room for all of the cloth forbids nothing.
                    var roomy = s.Recipe with
                    {
                        Hoops = [s.Recipe.Hoops[0] with { Throat = null }],
                    };
                    Assert.True(Found(roomy, s.Drawing).Count <= fewer.Count);
                },
                cases: 15
            );

    /// <summary>
    /// A strip, throat to the right, the hoop upright: the first field, which begins 0.1 mm before the strip (its reach), has
    /// the cloth from 99.9 mm on in the throat. With room for it, the strip takes ceil((length - o) / (w - o)) fields as
    /// without a throat (see FewestFieldsTests); without, it cannot be sewn.
    /// </summary>
    [Theory]
    [InlineData(300, 201, true)]
    [InlineData(300, 200, false)]
    [InlineData(300, 150, false)]
    [InlineData(90, 0, true)]
    public void AStripIsSewnWhereTheThroatHasRoom(int length, int room, bool sewn)
    {
        var hoop = Samples.Hoop(100, 100) with { Throat = new(HoopSide.Right, room * Units.Millimetre) };
        var recipe = Recipe(hoop, [Turn.None], hoop.Throat) with
        {
            Cloth = new() { Size = (length * Units.Millimetre, 200_000), ArtworkAt = new(0, 50_000) },
        };
        var found = FieldPlacer.Place(recipe, Samples.Drawing(Samples.Rectangle("strip", 0, 0, length, 90)), hoop);
        Assert.Equal(sewn, found.Succeeded);
        if (!sewn)
        {
            var error = Assert.Single(found.Diagnostics);
            Assert.Equal("SPL3020", error.Code);
            Assert.Contains("allow 90 deg under 'fields.turns'", error.Message, StringComparison.Ordinal);
            return;
        }
        var common = Units.ToMillimetres(CommonGround.Least(recipe.Registration)) - 0.2;
        var fewest = length <= 99.8 ? 1 : (int)Math.Ceiling((length - common) / (99.8 - common));
        Assert.Equal(fewest, found.Value[0].Fields.Length);
    }

    private static (int Count, int Bound) Found(Recipe recipe, Drawing drawing)
    {
        var task = CoverTask.Of(recipe, drawing, Template(recipe), null);
        var answer = FewestSearch.Find(task);
        return (answer.Covers is [var best, ..] ? best.Length : int.MaxValue, answer.LowerBound);
    }

    private static FieldTemplate Template(Recipe recipe) =>
        new(recipe.Hoops[0], 0, Units.TapeStep) { Turns = Turning.Of(recipe, recipe.Hoops[0]).Footprints };

    /// <summary>Two rectangles on a cloth of 460 x 460 mm, some turns, a throat on any side with room for some of the cloth.</summary>
    private static Gen<(Recipe Recipe, Drawing Drawing)> Cases() =>
        from width in Gen.Int[100, 300]
        from height in Gen.Int[60, 200]
        from x in Gen.Int[0, 200]
        from y in Gen.Int[0, 300]
        from hoopWidth in Gen.Int[110, 160]
        from hoopHeight in Gen.Int[110, 180]
        from turns in AllowedTurns
        from side in Sides
        from room in Gen.Int[150, 330]
        select (
            Recipe(Samples.Hoop(hoopWidth, hoopHeight), turns, new(side, room * Units.Millimetre)),
            Samples.Drawing(Samples.Rectangle("a", 0, 0, width, height), Samples.Rectangle("b", x, y, 80, 80))
        );

    private static Recipe Recipe(Hoop hoop, ImmutableArray<Turn> turns, Throat throat) =>
        With(Samples.Recipe(hoop with { Throat = throat }), turns) with
        {
            Cloth = new() { Size = (460_000, 460_000), ArtworkAt = new(20_000, 30_000) },
        };

    private static Recipe With(Recipe recipe, ImmutableArray<Turn> turns) =>
        recipe with
        {
            Fields = recipe.Fields with { Turns = turns },
        };

    /// <summary>From the middle of the hoop's edge at the throat to the cloth's edge, straight on.</summary>
    private static int Measured(Recipe recipe, Field field)
    {
        var (halfU, halfV) = (field.Hoop.Width / 2, field.Hoop.Height / 2);
        FieldPoint edge = field.Hoop.Throat!.Side switch
        {
            HoopSide.Right => new(halfU, 0),
            HoopSide.Top => new(0, halfV),
            HoopSide.Left => new(-halfU, 0),
            _ => new(0, -halfV),
        };
        var from = field.ToDesign(edge);
        var (dx, dy) = (from.X.CompareTo(field.Centre.X), from.Y.CompareTo(field.Centre.Y));
        var cloth = recipe.Cloth.OnDrawing!.Value;
        var beyond =
            dx > 0 ? cloth.Right - from.X
            : dx < 0 ? from.X - cloth.Left
            : dy > 0 ? cloth.Bottom - from.Y
            : from.Y - cloth.Top;
        return Math.Max(0, beyond);
    }
}
