using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Planning.Fields.Covering;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fields;

/// <summary>
/// Fields of 100 x 100 mm over a bar of 150 x 80 mm: the left one has its middle at 50, 40, the right one at 100, 40, so that
/// they share 50 mm. Millimetres.
/// </summary>
public sealed class CoverTests
{
    private static readonly FieldTemplate Template = new(Samples.Hoop(100, 100), 0, 0);
    private static readonly Field Left = At(50, 40);
    private static readonly Field Right = At(100, 40);

    [Fact]
    public void NothingIsOpenWhereFieldsHoldAllOfIt()
    {
        var grid = Grid(Task());
        Assert.Equal(0, grid.Open);
        grid.Exchange(Left, Right);
        Assert.NotEqual(0, grid.Open);
        grid.Exchange(Right, Left);
        Assert.Equal(0, grid.Open);
    }

    [Theory]
    [InlineData(60, 40)]
    [InlineData(30, 70)]
    [InlineData(120, 0)]
    [InlineData(400, 40)]
    public void AFieldThatIsExchangedCountsAsIfItHadBeenThereFromTheFirst(int x, int y)
    {
        var task = Task(wholes: Box(10, 10, 20, 20));
        var (moved, anew) = (Grid(task), Grid(task));
        moved.Exchange(Left, At(x, y));
        anew.Reset([At(x, y), Right]);
        Assert.Equal(anew.Open, moved.Open);
        Assert.Equal(anew.Needed(At(x, y)), moved.Needed(At(x, y)));
        Assert.Equal(anew.Needed(Right), moved.Needed(Right));
    }

    /// <summary>What one field holds whole is closed; what only both together hold stays open.</summary>
    [Theory]
    [InlineData(10, 40, 0)]
    [InlineData(110, 140, 0)]
    [InlineData(40, 110, 1)]
    public void AShapeThatStaysWholeWantsOneField(int from, int to, int open) =>
        Assert.Equal(open, Grid(Task(wholes: Box(from, 10, to, 20))).Open);

    [Theory]
    [InlineData(10, 10, 20, 20, true)]
    [InlineData(-20, 90, 200, 100, false)]
    [InlineData(155, 0, 160, 80, false)]
    public void WhatIsDrawnIsKnown(int left, int top, int right, int bottom, bool isDrawn)
    {
        // A speck far off, so that there is bare ground between.
        var task = Task() with
        {
            Drawn = [Samples.Ground(0, 0, 150, 0, 150, 80, 0, 80), Samples.Ground(190, 110, 191, 110, 191, 111)],
        };
        Assert.Equal(isDrawn, Grid(task).Drawn(Box(left, top, right, bottom)));
    }

    [Fact]
    public void AFieldIsNeededForWhatNoOtherOneHolds()
    {
        var grid = Grid(Task());
        Assert.Equal(Box(0, 0, 50, 80), grid.Needed(Left));
        Assert.Equal(Box(100, 0, 150, 80), grid.Needed(Right));
    }

    /// <summary>It goes on holding that from 0, where its right edge lies at 50, to 50, and 10 mm either way of the middle.</summary>
    [Fact]
    public void AFieldMayMoveAsLongAsItHoldsThat()
    {
        var task = Task();
        Assert.Equal(Box(0, 30, 50, 50), new Moves(task, Grid(task)).Room(Left));
        Assert.Null(new Moves(task with { Fixed = [Left] }, Grid(task)).Room(Left));
    }

    /// <summary>The first two share 20 mm, on which corners have room; the third lies apart.</summary>
    [Fact]
    public void FieldsThatShareGroundHandCornersOn()
    {
        ImmutableArray<Field> fields = [At(50, 40), At(130, 40), At(300, 40)];
        var task = Task() with { Rules = new RegistrationRules() };
        Assert.Equal(["0 1", "2"], Links.Groups(fields, task).Select(group => string.Join(' ', group)));
        Assert.Equal([1], Links.Reach(fields, [0], task));
        Assert.Equal([0], Links.Reach(fields, [1], task));
        Assert.Empty(Links.Reach(fields, [0, 1], task));
        Assert.Empty(Links.Reach(fields, [2], task));
    }

    /// <summary>A row of three of which the middle one is named last: one group, in ascending order.</summary>
    [Fact]
    public void AGroupIsInAscendingOrder()
    {
        var task = Task() with { Rules = new RegistrationRules() };
        Assert.Equal(["0 1 2"], Links.Groups([At(50, 40), At(210, 40), At(130, 40)], task).Select(Told));

        static string Told(List<int> group) => string.Join(' ', group);
    }

    /// <summary>As many columns as share ground for corners, and one less would not.</summary>
    [Theory]
    [InlineData(90)]
    [InlineData(150)]
    [InlineData(350)]
    [InlineData(1000)]
    public void AGridHasAsManyColumnsAsSharingGroundTakes(int width)
    {
        var rules = new RegistrationRules();
        var (columns, rows) = FieldGrid.Least(Box(0, 0, width, 90), Turn.None, Template, rules);
        Assert.Equal(1, rows);
        Assert.True(Length(columns) >= width * 1000);
        Assert.True(columns == 1 || Length(columns - 1) < width * 1000);

        // Of so many fields of which each shares what two corners need with the next.
        int Length(int count) => (count * 100_000) - ((count - 1) * CommonGround.Least(rules));
    }

    private static CoverGrid Grid(CoverTask task)
    {
        var grid = new CoverGrid(task, [Left, Right]);
        grid.Reset([Left, Right]);
        return grid;
    }

    private static CoverTask Task(params ImmutableArray<Box> wholes) =>
        new([Samples.Ground(0, 0, 150, 0, 150, 80, 0, 80)], wholes, Template, [Turn.None], null, [], []);

    private static Field At(int x, int y) => Template.At(Point.FromMillimetres(x, y), Turn.None);

    private static Box Box(int left, int top, int right, int bottom) =>
        new(left * 1000, top * 1000, right * 1000, bottom * 1000);
}
