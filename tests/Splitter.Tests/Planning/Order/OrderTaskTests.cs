using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Order;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Order;

/// <summary>
/// Fields of 100 x 100 mm in a square, each sharing a strip of 30 mm with its neighbours and 30 x 30 mm with the one across;
/// 0 and 1 above, 2 and 3 below. Millimetres.
/// </summary>
public sealed class OrderTaskTests
{
    /// <summary>From one neighbour two corners; from the one across, where two have no room, one beside another's.</summary>
    [Fact]
    public void DonorsAreThoseThatHaveRoomTogether()
    {
        Assert.Equal(["0 1", "0 1 2", "0 2", "1", "1 2", "2"], Sets(Task(3), 3));
        Assert.Equal(["0", "0 1", "0 1 3", "0 3", "1 3", "3"], Sets(Task(3), 2));
        Assert.Equal(["0 1", "0 2", "1", "1 2", "2"], Sets(Task(2), 3));
    }

    /// <summary>Only of what is sewn already.</summary>
    [Fact]
    public void WhatIsNotSewnGivesNothing() =>
        Assert.Equal(["1"], Task(3).DonorSets(3, f => f == 1).Select(set => string.Join(' ', set)));

    /// <summary>
    /// 1 mm inside the strip of 30 x 100 that both share, as far apart as may be: both at its ends, the third beside one.
    /// </summary>
    [Fact]
    public void CornersLieAtTheEndsOfCommonGround()
    {
        var (two, three) = (Task(2).Ideal(1, [0]), Task(3).Ideal(1, [0]));
        Assert.All(three, corner => Assert.Equal(0, corner.Donor));
        Assert.Equal(3, three.Distinct().Count());
        Assert.Equal([1_000, 99_000], two.Select(corner => corner.At.Y).Order());
        Assert.All(two.Concat(three), corner => Assert.True(corner.At.X is 71_000 or 99_000));
    }

    /// <summary>Each donor gives one at least, on ground that the two share.</summary>
    [Fact]
    public void EachDonorGivesOne()
    {
        var task = Task(3);
        Assert.Equal([0, 1], task.Ideal(3, [0, 1]).Select(corner => corner.Donor).Distinct().Order());
        var ideal = task.Ideal(3, [0, 1, 2]);
        Assert.Equal([0, 1, 2], ideal.Select(corner => corner.Donor).Order());
        Assert.All(ideal, corner => Assert.True(task.Common(3, corner.Donor).Contains(corner.At)));
        Assert.Equal([1, 2], task.Ideal(3, [1, 2]).Select(corner => corner.Donor).Distinct().Order());
        Assert.Empty(task.Ideal(3, [0]));
    }

    /// <summary>However few corners there are: from the one across, where two have no room, and a neighbour one each.</summary>
    [Fact]
    public void OfTwoCornersEachOfTwoDonorsGivesOne()
    {
        var task = Task(2);
        for (var field = 0; field < 4; field++)
            foreach (var donors in task.DonorSets(field, f => f != field))
                Assert.Equal(donors, task.Ideal(field, donors).Select(corner => corner.Donor).Distinct().Order());
    }

    /// <summary>Where straight seams cut something fields meet, whichever is named first; else at the corners of their ground.</summary>
    [Fact]
    public void FieldsMeetWhereSeamsCut()
    {
        var task = Task(3, new Crossing(0, 1, 0, new([new(85_000, 10_000), new(85_000, 60_000)])));
        Assert.Equal([new(85_000, 10_000), new(85_000, 60_000)], task.Meeting(1, 0).AsEnumerable());
        Assert.Equal(task.Meeting(0, 1).AsEnumerable(), task.Edge(0).AsEnumerable());
        Assert.Empty(task.Meeting(2, 3));
        Assert.Equal(4, task.Edge(2).Length);
        Assert.Equal(task.Ground(2).AsEnumerable(), task.Edge(2).AsEnumerable());
    }

    private static IEnumerable<string> Sets(OrderTask task, int field) =>
        task.DonorSets(field, f => f != field).Select(set => string.Join(' ', set)).Order(StringComparer.Ordinal);

    private static OrderTask Task(int corners, params ImmutableArray<Crossing> crossings)
    {
        ImmutableArray<Field> fields = [At(50, 50), At(120, 50), At(50, 120), At(120, 120)];
        var recipe = Samples.Recipe(Samples.Hoop(100, 100));
        return new(
            recipe with
            {
                Registration = recipe.Registration with { CornerCount = corners },
            },
            new(fields, [.. fields.Select(f => f.Usable)], 4),
            crossings,
            0
        );
    }

    private static Field At(int x, int y) => new(Samples.Hoop(100, 100), Point.FromMillimetres(x, y), Turn.None, 0);
}
