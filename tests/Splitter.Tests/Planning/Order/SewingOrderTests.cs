using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Planning.Order;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Order;

public sealed class SewingOrderTests
{
    /// <summary>All orders and all choices of donors, one after the other, of generated layouts.</summary>
    [Theory]
    [InlineData(2, 1, 6)]
    [InlineData(3, 1, 6)]
    [InlineData(2, 2, 6)]
    [InlineData(5, 1, 3)]
    [InlineData(3, 2, 4)]
    [InlineData(7, 1, 2)]
    public void TheWorstSeamIsAsGoodAsInTheBestOfAllOrders(int columns, int rows, int layouts)
    {
        var random = new Random((columns * 10) + rows);
        for (var i = 0; i < layouts; i++)
        {
            var (recipe, layout, crossings) = Generated(random, columns, rows);
            var drawing = Samples.Drawing(Samples.Rectangle("ground", 0, 0, columns * 80, rows * 80));
            var chosen = SewingOrder.Choose(recipe, drawing, layout, crossings);
            Assert.True(chosen.Succeeded, string.Join("\n", chosen.Diagnostics));
            var sequence = chosen.Value;
            var task = new OrderTask(recipe, layout, crossings, sequence.Order[0]);
            var worst = Worst(
                task,
                sequence.Order,
                [.. sequence.Donors.Select(d => d.Select(place => sequence.Order[place]).Order().ToImmutableArray())]
            );
            var best = BestOfAll(
                task,
                [sequence.Order[0]],
                [
                    [],
                ],
                double.PositiveInfinity
            );
            Assert.InRange(worst, best * (1 - 1e-9), best * (1 + 1e-9));
        }
    }

    [Fact]
    public void EveryFieldTakesCornersFromSewnOnesOnly()
    {
        var random = new Random(5);
        var (recipe, layout, crossings) = Generated(random, 4, 3);
        var drawing = Samples.Drawing(Samples.Rectangle("ground", 0, 0, 320, 240));
        var sequence = SewingOrder.Choose(recipe, drawing, layout, crossings).Value;
        Assert.Equal(Enumerable.Range(0, 12), sequence.Order.Order());
        Assert.Empty(sequence.Donors[0]);
        for (var place = 1; place < 12; place++)
        {
            Assert.NotEmpty(sequence.Donors[place]);
            Assert.All(sequence.Donors[place], d => Assert.InRange(d, 0, place - 1));
        }
    }

    /// <summary>In a ring of four fields the last one lies between two donors: by one alone it misses the other by far more.</summary>
    [Fact]
    public void TheLastOfARingIsSetByBothItsNeighbours()
    {
        var (recipe, layout, crossings) = Generated(new Random(1), 2, 2);
        var drawing = Samples.Drawing(Samples.Rectangle("ground", 0, 0, 160, 160));
        var sequence = SewingOrder.Choose(recipe, drawing, layout, crossings).Value;
        Assert.True(sequence.Donors[3].Length >= 2);
    }

    /// <summary>What a search keeps of a field while others come in is what it would find again.</summary>
    [Fact]
    public void WhatAFieldAddsStaysTheSameUntilOneNearItComesIn()
    {
        var (recipe, layout, crossings) = Generated(new Random(3), 5, 4);
        var task = new OrderTask(recipe, layout, crossings, 0);
        var partial = new PartialOrder(task);
        while (partial.Order.Count < task.Count)
        {
            int[] left = [.. Enumerable.Range(0, task.Count).Where(f => !partial.Holds(f))];
            var before = left.ToDictionary(f => f, partial.Ways);
            var next = left.First(f => before[f].Count > 0);
            partial.Add(next, before[next][0].Donors);
            foreach (var field in left.Where(f => f != next && !task.IsNear(f, next)))
            {
                var after = partial.Ways(field);
                Assert.Equal(before[field].Select(w => w.Own), after.Select(w => w.Own));
                Assert.Equal(
                    before[field].Select(w => string.Join(' ', w.Donors)),
                    after.Select(w => string.Join(' ', w.Donors))
                );
            }
        }
    }

    /// <summary>
    /// Starts of four times as many fields may go through sixteen times as many errors, since each field remembers those
    /// of all before it: no field is tried again for one that it has nothing to do with.
    /// </summary>
    [Fact]
    public void StartsOfManyFieldsAreFoundWithLittleWork()
    {
        var (few, many) = (Work(6, 6), Work(12, 12));
        Assert.InRange(many, 4 * few, 24 * few);

        static long Work(int columns, int rows)
        {
            var (recipe, layout, crossings) = Generated(new Random(7), columns, rows);
            var search = new OrderSearch(new(recipe, layout, crossings, 0));
            Assert.Equal(5, search.Starts().Count());
            return search.Work;
        }
    }

    private static double BestOfAll(
        OrderTask task,
        ImmutableArray<int> order,
        ImmutableArray<ImmutableArray<int>> donors,
        double best
    )
    {
        if (order.Length == task.Count)
            return Math.Min(best, Worst(task, order, donors));
        for (var field = 0; field < task.Count; field++)
            if (!order.Contains(field))
                foreach (var set in Subsets(order))
                    if (set.Length is > 0 and <= 3 && !task.Ideal(field, set).IsEmpty)
                        best = BestOfAll(task, order.Add(field), donors.Add(set), best);
        return best;
    }

    private static IEnumerable<ImmutableArray<int>> Subsets(ImmutableArray<int> of) =>
        Enumerable
            .Range(0, 1 << of.Length)
            .Select(bits => of.Where((_, i) => (bits & (1 << i)) != 0).Order().ToImmutableArray());

    /// <summary>The largest squared misfit of two fields at a seam, each set by its ideal corners.</summary>
    private static double Worst(OrderTask task, ImmutableArray<int> order, ImmutableArray<ImmutableArray<int>> donors)
    {
        var poses = new Poses(task.Count, task.Rules.Accuracy, task.Stretch, default);
        poses.AddFirst();
        for (var place = 1; place < order.Length; place++)
            poses.Add([
                .. task.Ideal(order[place], donors[place]).Select(c => new TakenCorner(c.At, order.IndexOf(c.Donor))),
            ]);
        return (
            from a in Enumerable.Range(0, order.Length)
            from b in Enumerable.Range(0, a)
            from at in task.Meeting(order[a], order[b])
            select poses.Variance(a, b, at)
        )
            .DefaultIfEmpty(0)
            .Max();
    }

    /// <summary>Fields in columns and rows, each somewhat astray, with a seam in the middle of what two of them share.</summary>
    private static (Recipe, Layout, ImmutableArray<Crossing>) Generated(Random random, int columns, int rows)
    {
        var hoop = Samples.Hoop(100, 100);
        ImmutableArray<Field> fields =
        [
            .. from row in Enumerable.Range(0, rows)
            from column in Enumerable.Range(0, columns)
            select new Field(
                hoop,
                Point.FromMillimetres((80 * column) + 40 + random.Next(-4, 5), (80 * row) + 40 + random.Next(-4, 5)),
                Turn.None,
                0
            ),
        ];
        var recipe = Samples.Recipe(hoop) with
        {
            Cloth = new()
            {
                Stretch = new()
                {
                    Warp = 0.001 * random.NextDouble(),
                    Weft = 0.001,
                    Bias = 0.003 * random.NextDouble(),
                },
            },
        };
        ImmutableArray<Crossing> crossings =
        [
            .. from a in Enumerable.Range(0, fields.Length)
            from b in Enumerable.Range(a + 1, fields.Length - a - 1)
            let common = fields[a].Usable.Common(fields[b].Usable)
            // Fields that touch by a corner alone do not meet.
            where !common.IsEmpty && Math.Max(common.Width, common.Height) > 50_000
            let middle = common.Centre
            let ends = common.Width > common.Height
                ? (new Point(common.Left, middle.Y), new Point(common.Right, middle.Y))
                : (new Point(middle.X, common.Top), new Point(middle.X, common.Bottom))
            select new Crossing(a, b, 0, new([ends.Item1, ends.Item2])),
        ];
        return (recipe, new(fields, [.. fields.Select(f => f.Usable)], 1), crossings);
    }
}
