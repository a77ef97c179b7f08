using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Planning.Fields.Covering;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fields;

/// <summary>
/// Two fields of 100 x 100 mm over a bar of 150 x 60 mm. What seams show is said by the test: the more, the further a
/// field lies down. Either could go down by 20 mm and up by 20 mm from where both lie. Millimetres.
/// </summary>
public sealed class RefiningTests
{
    private static readonly FieldTemplate Template = new(Samples.Hoop(100, 100), 0, 0);

    private static readonly ImmutableArray<Field> Fields = [At(50, 30), At(100, 30)];

    private static readonly CoverTask Task = new(
        [Samples.Ground(0, 0, 150, 0, 150, 60, 0, 60)],
        [],
        Template,
        [Turn.None],
        new RegistrationRules(),
        [],
        []
    );

    [Fact]
    public void FieldsMoveToWhereSeamsShowLess() =>
        Assert.All(Refined(Task), field => Assert.InRange(field.Centre.Y, 10_000, 25_000));

    /// <summary>A zone right above them, that the second field only touches.</summary>
    [Fact]
    public void NoHoopGoesOverForbiddenGround()
    {
        var fields = Refined(Task with { Forbidden = [new(110_000, -60_000, 150_000, -20_000)] });
        Assert.InRange(fields[0].Centre.Y, 10_000, 25_000);
        Assert.Equal(30_000, fields[1].Centre.Y);
    }

    /// <summary>The cloth ends 20 mm above the bar, where both fields do.</summary>
    [Fact]
    public void NoFieldGoesFurtherOverTheClothsEdge()
    {
        var fields = Refined(Task with { Cloth = new(-100_000, -20_000, 300_000, 300_000) });
        Assert.All(fields, field => Assert.Equal(30_000, field.Centre.Y));
        // Where all of both lies on it, they go up as far as it does.
        var lower = Refined(Task with { Cloth = new(-100_000, -25_000, 300_000, 300_000) });
        Assert.All(lower, field => Assert.Equal(25_000, field.Centre.Y));
    }

    /// <summary>The first field holds what the recipe wants it to hold, wherever seams show less.</summary>
    [Fact]
    public void TheFirstFieldKeepsWhatItHolds()
    {
        var fields = Refined(Task with { Held = new(50_000, 75_000, 50_000, 75_000) });
        Assert.InRange(fields[0].Centre.Y, 25_000, 30_000);
        Assert.InRange(fields[1].Centre.Y, 10_000, 24_000);
    }

    /// <summary>
    /// A motif ends 1 mm inside the first field. Where it wants to stay whole the field cannot leave it, to the left where seams
    /// would show less; else it can.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void WhatAFieldHoldsWholeItGoesOnHolding(bool wantsWhole)
    {
        var motif = new Box(70_000, 10_000, 99_000, 40_000);
        var drawing = Samples.Drawing(
            Samples.Rectangle("bar", 0, 0, 160, 60),
            Samples.Rectangle("motif", 70, 10, 29, 30) with
            {
                KeepWhole = false,
                WantsWhole = wantsWhole,
            }
        );
        ImmutableArray<Field> fields = [At(50, 30), At(125, 30)];
        var refined = FieldPlacer.Refined(
            Samples.Recipe(Template.Hoop),
            drawing,
            new Layout(fields, [.. fields.Select(f => f.Usable.Grown(-Units.TapeStep))], 2),
            (grounds, _) => grounds[0].Centre.X / 100.0,
            1
        );
        Assert.Equal(wantsWhole, refined.Grounds.Any(ground => ground.Contains(motif)));
    }

    private static ImmutableArray<Field> Refined(CoverTask task) =>
        Refining.Refined(task, Fields, (grounds, _) => grounds.Sum(g => g.Centre.Y / 1000.0), 1);

    private static Field At(int x, int y) => Template.At(Point.FromMillimetres(x, y), Turn.None);
}
